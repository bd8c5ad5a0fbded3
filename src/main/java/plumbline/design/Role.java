package plumbline.design;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * What a kind of port must look like; what is left out is not checked. Inheritance and overrides in
 * place are already applied.
 *
 * @param name its name
 * @param at where it is declared; for a role with overrides, where they stand
 * @param wishes the wanted values, each under its key's type
 */
public record Role(String name, Position at, Map<RoleKey<?>, Wanted<?>> wishes) {
  /** The reserved role of ports that are shut in an unused VLAN. */
  public static final String SPARE = "spare";

  /** Copies the wishes. */
  public Role {
    wishes = Map.copyOf(wishes);
  }

  /** The wish under a key, if the role has one. */
  @SuppressWarnings("unchecked") // the reader stores each value under its own key's type
  public <T> Optional<Wanted<T>> get(RoleKey<T> key) {
    return Optional.ofNullable((Wanted<T>) wishes.get(key));
  }

  /** The wanted value under a key, if the role has one. */
  public <T> Optional<T> value(RoleKey<T> key) {
    return get(key).map(Wanted::value);
  }

  /** Says whether this is the reserved role of spare ports. */
  public boolean isSpare() {
    return name.equals(SPARE);
  }

  /**
   * The VLANs that a port of the role must carry. An unused native VLAN need not exist: its frames
   * are to be dropped.
   */
  public VlanSet neededVlans() {
    VlanSet vlans = value(RoleKeys.TAGGED).orElse(VlanSet.NONE);
    for (RoleKey<DesignVlan> key : List.of(RoleKeys.ACCESS, RoleKeys.VOICE, RoleKeys.NATIVE)) {
      vlans =
          vlans.plus(
              value(key)
                  .filter(vlan -> !vlan.unused())
                  .map(vlan -> VlanSet.of(vlan.id().number()))
                  .orElse(VlanSet.NONE));
    }
    return vlans.minus(VlanSet.RESERVED);
  }
}
