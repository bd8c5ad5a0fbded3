package plumbline.effective;

import java.util.regex.Pattern;
import java.util.stream.Stream;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.port.PortNames.Reading;

/** Tells which ports a header may mean whose words could be several kinds of port. */
final class AmbiguousHeader {
  /** The number of different ambiguous words of one header that are followed up. */
  private static final int MAX_WORDS = 2;

  private AmbiguousHeader() {}

  /** The ports that the operand of such a header may name. */
  static Stream<PortName> meanings(String operand) {
    return meanings(operand, MAX_WORDS);
  }

  private static Stream<PortName> meanings(String operand, int words) {
    Reading reading = PortNames.parse(operand);
    if (reading instanceof Reading.Ports named) {
      return named.names().stream();
    }
    if (!(reading instanceof Reading.Ambiguous ambiguous) || words == 0) {
      return Stream.empty();
    }
    Pattern word =
        Pattern.compile(
            "(?<![\\p{Alpha}-])" + Pattern.quote(ambiguous.word()) + "(?![\\p{Alpha}-])",
            Pattern.CASE_INSENSITIVE);
    return ambiguous.kinds().stream()
        .flatMap(kind -> meanings(word.matcher(operand).replaceAll(kind), words - 1));
  }
}
