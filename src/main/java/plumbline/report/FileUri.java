package plumbline.report;

import java.net.URI;
import java.net.URISyntaxException;

/** Names of files as URIs. */
final class FileUri {
  private FileUri() {}

  /**
   * The name as a URI reference (RFC 3986): relative where the name is, everything outside ASCII
   * and every reserved character that would mean something else percent-encoded.
   */
  static String of(String file) {
    String path = file;
    int slash = file.indexOf('/');
    int colon = file.indexOf(':');
    // RFC 3986 section 4.2: a colon in the first segment would be taken for the end of a scheme
    if (colon >= 0 && (slash < 0 || colon < slash)) {
      path = "./" + file;
    }
    try {
      return path.startsWith("/")
          ? new URI("file", "", path, null).toASCIIString()
          : new URI(null, null, path, null).toASCIIString();
    } catch (URISyntaxException e) {
      throw new IllegalArgumentException("a path is always a URI once it is encoded", e);
    }
  }
}
