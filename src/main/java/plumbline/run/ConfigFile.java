package plumbline.run;

import java.util.List;
import plumbline.effective.SwitchSettings;

/** A file that was given as config, read or not. */
public sealed interface ConfigFile {
  /** The file as typed. */
  String file();

  /** The file's name without folder and extension. */
  String stem();

  /** Whether it was given itself, not found in a folder that was given. */
  boolean named();

  /**
   * A file that was read.
   *
   * @param file as typed
   * @param stem the file's name without folder and extension
   * @param named whether it was given itself
   * @param sha256 lower-case hexadecimal, of the whole file
   * @param switches what its switches do, in the order of the text, at least one
   */
  record Read(String file, String stem, boolean named, String sha256, List<SwitchSettings> switches)
      implements ConfigFile {
    /** Copies the switches. */
    public Read {
      switches = List.copyOf(switches);
    }
  }

  /**
   * A file found in a folder that is one of this program's own and no config.
   *
   * @param file as typed
   * @param stem the file's name without folder and extension
   * @param what a noun with its article: {@code a design}
   */
  record Skipped(String file, String stem, String what) implements ConfigFile {
    @Override
    public boolean named() {
      return false;
    }

    /** The one line that says so. */
    public String line() {
      return file + ": left out, for it is " + what + " and no config";
    }
  }

  /**
   * A file that could not be read.
   *
   * @param file as typed
   * @param stem the file's name without folder and extension
   * @param named whether it was given itself
   * @param reason a clause for the reader
   * @param bug whether this program is to blame
   */
  record Unread(String file, String stem, boolean named, String reason, boolean bug)
      implements ConfigFile {
    /** The one line that says so. */
    public String line() {
      return file + ": " + reason;
    }
  }
}
