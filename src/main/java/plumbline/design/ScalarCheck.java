package plumbline.design;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.design.Shape.Either;
import plumbline.design.Shape.Measure;
import plumbline.design.Shape.Text;
import plumbline.design.Shape.Truth;
import plumbline.design.Shape.Whole;
import plumbline.design.Shape.Words;
import plumbline.text.Nearest;
import plumbline.text.Secrets;
import plumbline.text.Wording;
import plumbline.yaml.Node;

/** Compares single values with their shape. */
final class ScalarCheck {
  private ScalarCheck() {}

  /** What is wrong with a value; empty when it has the shape. */
  static Optional<String> fault(Node.Scalar scalar, Shape shape, String label) {
    if (has(scalar, shape)) {
      return Optional.empty();
    }
    if (scalar.kind() == Node.Kind.NOTHING) {
      return Optional.of(label + " has no value; expected " + shape.expected());
    }
    String must = label + " must be " + shape.expected() + ", found " + found(scalar, label);
    if (Secrets.announces(label)) {
      // What was likely meant, or a plainer spelling, would tell of the value as well.
      return Optional.of(must);
    }
    if (scalar.kind() == Node.Kind.TEXT && takesNumbers(shape) && isPlain(scalar.text())) {
      return Optional.of(must + " in quotes; write it without them");
    }
    if (scalar.kind() == Node.Kind.ODD_NUMBER && takesNumbers(shape) && !isPlain(scalar.text())) {
      return Optional.of(must + ", which programs read differently" + plain(scalar.text()));
    }
    Optional<String> meant = meant(scalar.text(), shape);
    if (meant.isPresent()) {
      String found = label + " cannot be " + found(scalar, label);
      return Optional.of(found + "; did you mean " + Wording.quote(meant.get()) + "?");
    }
    return Optional.of(must);
  }

  /** The value as a message shows it: hidden when its label announces a secret. */
  static String found(Node.Scalar scalar, String label) {
    if (scalar.kind() == Node.Kind.NOTHING) {
      return "nothing";
    }
    return Secrets.announces(label) ? Secrets.MASK : Wording.quote(scalar.text());
  }

  private static boolean has(Node.Scalar scalar, Shape shape) {
    if (shape instanceof Either either) {
      return either.options().stream().anyMatch(option -> has(scalar, option));
    }
    if (shape instanceof Truth) {
      return scalar.kind() == Node.Kind.TRUTH;
    }
    if (shape instanceof Whole whole) {
      return scalar.kind() == Node.Kind.INTEGER && isBetween(scalar, whole.min(), whole.max());
    }
    if (shape instanceof Measure measure) {
      return (scalar.kind() == Node.Kind.INTEGER || scalar.kind() == Node.Kind.DECIMAL)
          && new BigDecimal(scalar.text()).signum() > 0
          && isBetween(scalar, 0, measure.max());
    }
    if (shape instanceof Words words) {
      return scalar.kind() == Node.Kind.TEXT && words.words().contains(scalar.text());
    }
    return shape instanceof Text text
        && (scalar.kind() == Node.Kind.TEXT || (text.numbers() && isNumber(scalar)))
        && text.pattern().matcher(scalar.text()).matches();
  }

  private static boolean isNumber(Node.Scalar scalar) {
    return switch (scalar.kind()) {
      case INTEGER, DECIMAL, ODD_NUMBER -> true;
      default -> false;
    };
  }

  private static boolean isBetween(Node.Scalar scalar, int min, int max) {
    BigDecimal number = new BigDecimal(scalar.text());
    return number.compareTo(BigDecimal.valueOf(min)) >= 0
        && number.compareTo(BigDecimal.valueOf(max)) <= 0;
  }

  private static boolean takesNumbers(Shape shape) {
    return shape instanceof Whole
        || shape instanceof Measure
        || (shape instanceof Either either
            && either.options().stream().anyMatch(ScalarCheck::takesNumbers));
  }

  private static boolean isPlain(String digits) {
    return digits.length() < 1000 && digits.matches("-?[1-9][0-9]*");
  }

  /** The plain spelling of digits with zeros before them, as advice. */
  private static String plain(String digits) {
    return digits.length() < 10 && digits.matches("0+[1-9][0-9]*")
        ? "; write " + digits.replaceFirst("^0+", "")
        : "";
  }

  /** The word that was most likely meant. */
  private static Optional<String> meant(String text, Shape shape) {
    if (shape instanceof Truth) {
      return switch (text.toLowerCase(java.util.Locale.ROOT)) {
        case "yes", "on" -> Optional.of("true");
        case "no", "off" -> Optional.of("false");
        default -> Nearest.to(text, List.of("true", "false"));
      };
    }
    List<String> words = new ArrayList<>();
    if (shape instanceof Words one) {
      words.addAll(one.words());
    } else if (shape instanceof Either either) {
      for (Shape option : either.options()) {
        if (option instanceof Words some) {
          words.addAll(some.words());
        }
      }
    }
    return Nearest.to(text, words);
  }
}
