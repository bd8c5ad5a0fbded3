package plumbline.run;

/** Hears how far a run is, from several threads. */
public interface Watcher {
  /** Nobody who wants to know. */
  Watcher NONE =
      new Watcher() {
        @Override
        public void read(int done, int of) {}

        @Override
        public void comparing(int configs) {}

        @Override
        public void end() {}
      };

  /**
   * Files have been read.
   *
   * @param done how many so far; numbers may come in any order
   * @param of how many there are
   */
  void read(int done, int of);

  /** All that could be read is now held against the design. */
  void comparing(int configs);

  /** What was watched is over, well or not. */
  void end();
}
