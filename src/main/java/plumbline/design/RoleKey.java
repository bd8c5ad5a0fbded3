package plumbline.design;

/**
 * Names one thing that a role can ask of a port; the keys are listed in {@link RoleKeys}.
 *
 * @param name as the design spells it
 * @param type class of the wanted value
 * @param <T> type of the wanted value
 */
public record RoleKey<T>(String name, Class<T> type) {
  @Override
  public String toString() {
    return name;
  }
}
