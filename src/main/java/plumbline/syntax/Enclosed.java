package plumbline.syntax;

/**
 * Marks the lines that another line encloses: banners, certificate and key blobs, and the header of
 * one dialect that names the switch on a bare line. Lines are counted from 0.
 */
final class Enclosed {
  private final CleanLines lines;
  private final ScannedLines out;

  Enclosed(CleanLines lines, ScannedLines out) {
    this.lines = lines;
    this.out = out;
  }

  /** The line behind a banner or blob that opens here; the line itself where none does. */
  int end(int line, String content) {
    int last = Banner.lastLine(lines, line, content);
    if (last == Banner.NEVER) {
      out.mark(line, Mark.Kind.OPEN_BANNER, "");
      out.kind(line, LineKind.BANNER);
      return line + 1;
    }
    if (last >= 0) {
      out.kinds(line, last + 1, LineKind.BANNER);
      return last + 1;
    }
    Blob.Extent blob = Blob.at(lines, line, content);
    if (blob.end() == 0) {
      return line;
    }
    if (blob.first() > line) {
      out.kind(line, LineKind.STATEMENT);
    }
    out.kinds(blob.first(), blob.end(), LineKind.BLOB);
    if (!blob.closed()) {
      out.mark(blob.first(), Mark.Kind.OPEN_BLOB, "");
    }
    return blob.end();
  }

  /** The line behind the header of one dialect: a fixed word, a bare name, versions, {@code @}. */
  int endOfBareNameHeader(int line) {
    out.mark(line, Mark.Kind.START, "");
    out.kind(line, LineKind.NOISE);
    int at = line + 1;
    if (at < lines.count() && !lines.isEmpty(at) && lines.content(at).indexOf(' ') < 0) {
      out.name(at, lines.content(at));
      out.mark(at, Mark.Kind.HOSTNAME, lines.content(at));
      at++;
    }
    while (at < lines.count() && !Shapes.isPortHeader(lines.content(at))) {
      out.kind(at, LineKind.NOISE);
      if (lines.content(at++).equals("@")) {
        break;
      }
    }
    return at;
  }
}
