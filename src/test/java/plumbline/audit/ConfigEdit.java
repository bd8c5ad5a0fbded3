package plumbline.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One edit of one block of a config.
 *
 * @param file the name of the file
 * @param block the line that opens the block, or {@link #TOP}
 * @param what {@code + LINE}, {@code - LINE}, {@code ~ OLD -> NEW}, {@code drop}, {@code cut after
 *     LINE}, {@code empty} or {@code lost}
 */
record ConfigEdit(String file, String block, String what) {
  /** The text outside of blocks. */
  static final String TOP = "top";

  /** Where lines that are added at the top go. */
  private static final String TAIL = "line con 0";

  /** Whether it takes away a part of the file, whatever stands there. */
  boolean isOfFile() {
    return what.startsWith("cut ") || what.equals("empty") || what.equals("lost");
  }

  /** Edits the files; an edit that changes nothing is a mistake of the table. */
  void apply(Map<String, List<String>> files) {
    if (what.equals("lost")) {
      require(files.remove(file) != null);
      return;
    }
    List<String> lines = files.computeIfAbsent(file, any -> new ArrayList<>());
    if (what.equals("empty")) {
      lines.clear();
      return;
    }
    if (what.startsWith("cut after ")) {
      int last = lines.indexOf(" " + what.substring("cut after ".length()));
      require(last >= 0);
      lines.subList(last + 1, lines.size()).clear();
      return;
    }
    List<String> part = part(lines);
    String indent = block.equals(TOP) ? "" : " ";
    if (what.equals("drop")) {
      part.clear();
    } else if (what.startsWith("+ ")) {
      int tail = block.equals(TOP) ? part.indexOf(TAIL) : part.size();
      part.add(Math.max(tail, 0), indent + what.substring(2));
    } else if (what.startsWith("- ")) {
      require(part.remove(indent + what.substring(2)));
    } else {
      String[] oldAndNew = what.substring(2).split(" -> ", 2);
      int at = part.indexOf(indent + oldAndNew[0]);
      require(what.startsWith("~ ") && at >= 0);
      part.set(at, indent + oldAndNew[1]);
    }
  }

  /** The lines of the block, its header included; the list writes through. */
  private List<String> part(List<String> lines) {
    if (block.equals(TOP)) {
      return lines;
    }
    int from = lines.indexOf(block);
    require(from >= 0);
    int to = from + 1;
    while (to < lines.size() && lines.get(to).startsWith(" ")) {
      to++;
    }
    return lines.subList(from, to);
  }

  private void require(boolean changed) {
    if (!changed) {
      throw new IllegalArgumentException("changes nothing: " + this);
    }
  }
}
