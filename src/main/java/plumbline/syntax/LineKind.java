package plumbline.syntax;

import plumbline.statement.Command.Layout;

/** What a line of a capture is, before any context is known. */
enum LineKind {
  /** Nothing on it. */
  BLANK(Layout.Kind.BLANK),
  /** A comment. */
  COMMENT(Layout.Kind.COMMENT),
  /** Part of a banner. */
  BANNER(Layout.Kind.BANNER),
  /** Part of a certificate or key. */
  BLOB(Layout.Kind.BLOB),
  /** A prompt, a pager mark, another command's output. */
  NOISE(Layout.Kind.NOISE),
  /** A log message. */
  LOG(Layout.Kind.NOISE),
  /** Names the switch without being a statement. */
  NAME(Layout.Kind.NOISE),
  /** A statement with a log message in it. */
  GARBLED(Layout.Kind.NOISE),
  /** A statement. */
  STATEMENT(Layout.Kind.NOISE);

  private final Layout.Kind layout;

  LineKind(Layout.Kind layout) {
    this.layout = layout;
  }

  /** The kind as callers see it; of no use for lines that are statements. */
  Layout.Kind layout() {
    return layout;
  }

  /** Says whether the line becomes a statement of its own. */
  boolean isStatement() {
    return this == STATEMENT || this == GARBLED || this == NAME;
  }
}
