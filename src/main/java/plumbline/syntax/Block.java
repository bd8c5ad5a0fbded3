package plumbline.syntax;

import plumbline.statement.Context;
import plumbline.statement.Meaning;

/** The block that is open while the lines of a switch are cut: how deep it is and what it holds. */
final class Block {
  private static final int NONE = -1;

  private final Context context;
  private final int indent;
  private final int line;
  private final boolean weak;
  private final Meaning unread;
  private boolean indented;
  private boolean sealed;
  private boolean commented;
  private int parent = NONE;
  private String group = "";
  private int groupIndent;

  private Block(Context context, int indent, int line, boolean weak, Meaning unread) {
    this.context = context;
    this.indent = indent;
    this.line = line;
    this.weak = weak;
    this.unread = unread;
  }

  /** Outside every block. */
  static Block top() {
    return new Block(Context.TOP, NONE, NONE, false, StatementList.harmless(""));
  }

  /** A block that is read. */
  static Block read(Context context, int indent, int line) {
    return new Block(context, indent, line, false, StatementList.harmless(""));
  }

  /** A block that is not read; its lines count as harmless statements of its keyword. */
  static Block unread(String keyword, int indent, int line) {
    return new Block(Context.OTHER, indent, line, false, StatementList.harmless(keyword));
  }

  /** A statement that is a block's header only if deeper lines follow. */
  static Block perhaps(String keyword, int indent, int line) {
    return new Block(Context.OTHER, indent, line, true, StatementList.harmless(keyword));
  }

  Context context() {
    return context;
  }

  /** The width of the blanks before its header; -1 outside every block. */
  int indent() {
    return indent;
  }

  /** Its header's line, counted from 0. */
  int header() {
    return line;
  }

  boolean isTop() {
    return context == Context.TOP;
  }

  /** Says whether only deeper lines belong to it. */
  boolean isWeak() {
    return weak;
  }

  /** What its lines mean while it is not read. */
  Meaning unread() {
    return unread;
  }

  /** Says whether it has lines that are deeper than its header. */
  boolean isIndented() {
    return indented;
  }

  /** Notes a line that is deeper than the header. */
  void deeper() {
    indented = true;
    sealed = false;
  }

  /** Notes a comment; at the header's depth, below deeper lines, it is how dumps close a block. */
  void comment(int depth) {
    sealed = indented && depth <= indent;
    commented = true;
  }

  /** Says whether a comment closed it, as in dumps. */
  boolean isSealed() {
    return sealed;
  }

  /** Says whether a comment stands below the header or below its last line. */
  boolean isCommented() {
    return commented;
  }

  /** Notes a line that belongs to the block. */
  void taken() {
    commented = false;
  }

  /** The context of layout here: a header that turned out to be none holds nothing. */
  Context layoutContext() {
    return weak && !indented ? Context.TOP : context;
  }

  /** Says whether the text goes on inside it. */
  boolean isOpen() {
    return !isTop() && !sealed && (!weak || indented);
  }

  /** Says whether a line is so deep that it belongs to an unread line above, not to the block. */
  boolean isBelowParent(int depth) {
    if (parent != NONE && depth <= parent) {
      parent = NONE;
    }
    return parent != NONE;
  }

  /** Notes a line under which deeper ones are not the block's own. */
  void parent(int depth) {
    parent = depth;
  }

  /** Opens a redundancy group, such as {@code hsrp 10}, for the deeper lines that follow. */
  void group(String header, int depth) {
    group = header;
    groupIndent = depth;
  }

  /** The open redundancy group; empty where none is open. */
  String group() {
    return group;
  }

  /** Says whether a line of this depth belongs to the open redundancy group; closes it if not. */
  boolean isInGroup(int depth) {
    if (!group.isEmpty() && depth <= groupIndent) {
      group = "";
    }
    return !group.isEmpty();
  }
}
