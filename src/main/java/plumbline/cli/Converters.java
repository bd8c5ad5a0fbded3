package plumbline.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import plumbline.finding.Severity;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.port.PortNames.Reading;
import plumbline.text.Wording;

/** Words of the command line as values. */
final class Converters {
  private Converters() {}

  /** Standard input can be read once. */
  static void onlyOnce(CommandSpec spec, List<String> configs) {
    if (configs.stream().filter("-"::equals).count() > 1) {
      throw new ParameterException(
          spec.commandLine(), "standard input (-) is given twice and can be read once");
    }
  }

  /** A severity by its word. */
  static final class OfSeverity implements ITypeConverter<Severity> {
    @Override
    public Severity convert(String word) {
      List<String> words = Arrays.stream(Severity.values()).map(Severity::toString).toList();
      return Severity.named(word)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      Wording.quote(word) + " is no severity; " + Wording.remedy(word, words, "")));
    }
  }

  /** A day or a moment, UTC, in a year that reports can write with four digits. */
  static final class OfInstant implements ITypeConverter<Instant> {
    private static final int FIRST_YEAR = 1970;
    private static final int LAST_YEAR = 9999;

    @Override
    public Instant convert(String word) {
      Instant moment = parse(word);
      int year = moment.atOffset(ZoneOffset.UTC).getYear();
      if (year < FIRST_YEAR || year > LAST_YEAR) {
        throw new TypeConversionException(
            Wording.quote(word)
                + " is out of range; expected a year from "
                + FIRST_YEAR
                + " to "
                + LAST_YEAR);
      }
      return moment;
    }

    private static Instant parse(String word) {
      try {
        return word.contains("T")
            ? Instant.parse(word)
            : LocalDate.parse(word).atStartOfDay(ZoneOffset.UTC).toInstant();
      } catch (DateTimeParseException e) {
        throw new TypeConversionException(
            Wording.quote(word)
                + " is no date; expected such as 2026-11-25 or"
                + " 2026-11-25T02:10:00Z");
      }
    }
  }

  /** One port, in any spelling. */
  static final class OfPort implements ITypeConverter<PortName> {
    @Override
    public PortName convert(String word) {
      Reading reading = PortNames.parse(word);
      if (reading instanceof Reading.Ports ports && ports.names().size() == 1) {
        return ports.names().get(0);
      }
      if (reading instanceof Reading.Ambiguous ambiguous) {
        throw new TypeConversionException(
            Wording.quote(word)
                + " could be several ports; expected "
                + Wording.alternatives(ambiguous.kinds()));
      }
      throw new TypeConversionException(
          Wording.quote(word) + " is not one port; expected such as Gi1/0/1 or Ethernet1/1");
    }
  }
}
