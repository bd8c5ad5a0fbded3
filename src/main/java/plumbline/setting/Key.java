package plumbline.setting;

/**
 * Names one setting of a port and the type of its value; the keys are listed in {@link Keys}.
 *
 * @param name the trade's word, lower case with hyphens, as reports and designs spell it
 * @param type class of the value
 * @param <T> type of the value
 */
public record Key<T>(String name, Class<T> type) implements Comparable<Key<?>> {
  @Override
  public int compareTo(Key<?> other) {
    return name.compareTo(other.name);
  }

  @Override
  public String toString() {
    return name;
  }
}
