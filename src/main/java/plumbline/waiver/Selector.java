package plumbline.waiver;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.text.Glob;

/**
 * What a waiver is for: rule, switch, port and subject. A part that is absent fits anything, an
 * empty one fits only nothing, and {@code *} and {@code ?} are wildcards. Letter case counts in
 * subjects only; a port may be spelled in any way, and a range names several.
 */
final class Selector {
  private final String rule;
  private final Optional<String> switchName;
  private final Optional<String> port;
  private final Optional<String> subject;

  private final Pattern rulePattern;
  private final Optional<Pattern> switchPattern;
  private final Optional<Pattern> portPattern;
  private final List<PortName> ports;
  private final Optional<Pattern> subjectPattern;

  Selector(
      String rule, Optional<String> switchName, Optional<String> port, Optional<String> subject) {
    this.rule = rule;
    this.switchName = switchName;
    this.port = port;
    this.subject = subject;
    this.rulePattern = Glob.compiled(rule, false);
    this.switchPattern = switchName.map(word -> Glob.compiled(word, true));
    this.ports = port.filter(word -> !isPattern(word)).map(Selector::named).orElse(List.of());
    this.portPattern = port.map(word -> Glob.compiled(full(word), true));
    this.subjectPattern = subject.map(word -> Glob.compiled(word, false));
  }

  private static List<PortName> named(String word) {
    return PortNames.parse(word) instanceof PortNames.Reading.Ports read ? read.names() : List.of();
  }

  /** A pattern such as {@code Gi1/0/*} with the kind written out, where it is clear which. */
  private static String full(String word) {
    String kind = word.replaceFirst("(?s)[^A-Za-z-].*", "");
    boolean isClear =
        isPattern(word)
            && !kind.isEmpty()
            && word.length() > kind.length()
            && Character.isDigit(word.charAt(kind.length()));
    return isClear && PortNames.parse(kind + "1") instanceof PortNames.Reading.Ports read
        ? read.names().get(0).kind().fullName() + word.substring(kind.length())
        : word;
  }

  static boolean isPattern(String word) {
    return word.contains("*") || word.contains("?");
  }

  boolean fitsRule(String id) {
    return rulePattern.matcher(id).matches();
  }

  boolean fitsSwitch(String name) {
    return fits(switchPattern, name);
  }

  /** Whether it is for something with that rule, at that place. */
  boolean fits(String id, String onSwitch, String atPort, Optional<PortName> name, String words) {
    boolean byName = !ports.isEmpty() && name.isPresent();
    boolean fitsPort = byName ? ports.contains(name.get()) : fits(portPattern, atPort);
    return fitsRule(id) && fitsSwitch(onSwitch) && fitsPort && fits(subjectPattern, words);
  }

  private static boolean fits(Optional<Pattern> pattern, String text) {
    return pattern.isEmpty() || pattern.get().matcher(text).matches();
  }

  /** The rule, as written. */
  String rule() {
    return rule;
  }

  /** The name of the one switch that it is for, lower case. */
  Optional<String> oneSwitch() {
    return switchName
        .filter(name -> !name.isEmpty() && !isPattern(name))
        .map(name -> name.toLowerCase(Locale.ROOT));
  }

  /** The one port that it is for. */
  Optional<PortName> onePort() {
    return ports.size() == 1 ? Optional.of(ports.get(0)) : Optional.empty();
  }

  /** Whether it can be for findings that are about no switch in particular. */
  boolean isForNoSwitch() {
    return fitsSwitch("");
  }

  /** Rule, switch, port and subject, in words. */
  String words() {
    return rule + " at " + switchName.orElse("*") + detail();
  }

  /** The same without switch and port. */
  String wordsWithoutPlace() {
    return rule + subject.filter(word -> !word.isEmpty()).map(word -> ", " + word).orElse("");
  }

  private String detail() {
    return port.filter(word -> !word.isEmpty()).map(word -> " " + word).orElse("")
        + subject.filter(word -> !word.isEmpty()).map(word -> ", " + word).orElse("");
  }
}
