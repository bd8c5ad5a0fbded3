package plumbline.waiver;

import java.util.List;

/** A file of waivers without a fault. */
public final class WaiverFile {
  private final String file;
  private final String sha256;
  private final List<WaiverEntry> entries;

  WaiverFile(String file, String sha256, List<WaiverEntry> entries) {
    this.file = file;
    this.sha256 = sha256;
    this.entries = List.copyOf(entries);
  }

  /** Its name, as typed. */
  public String file() {
    return file;
  }

  /** SHA-256 of its bytes, lower-case hexadecimal. */
  public String sha256() {
    return sha256;
  }

  /** The waivers in its order. */
  List<WaiverEntry> entries() {
    return entries;
  }
}
