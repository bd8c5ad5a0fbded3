package plumbline.wish;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import plumbline.design.Qos;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.effective.PortSettings;
import plumbline.inspect.Views;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

class WishTest {
  @Test
  void a_tagged_list_is_compared_without_native_reserved_and_tolerated_vlans() {
    assertThat(tagged(Map.of(RoleKeys.TAGGED, VlanSet.of(220, 231)))).isEqualTo(Truth.NO);
    assertThat(
            tagged(
                Map.of(RoleKeys.TAGGED, VlanSet.of(220, 231), RoleKeys.MAY_CARRY, VlanSet.of(500))))
        .isEqualTo(Truth.YES);
  }

  @Test
  void protection_without_effect_is_not_protection() {
    assertThat(same(Views.TRUNK, RoleKeys.FAST_START, true, Keys.FAST_START)).contains(Truth.NO);
    assertThat(same(Views.TRUNK, RoleKeys.FAST_START, false, Keys.FAST_START)).contains(Truth.YES);
  }

  @Test
  void a_bundle_where_none_is_designed_differs() {
    assertThat(same(Views.TRUNK, RoleKeys.BUNDLE, RoleKeys.BundleWish.NONE, Keys.BUNDLE))
        .contains(Truth.NO);
    assertThat(same(Views.TRUNK, RoleKeys.BUNDLE, RoleKeys.BundleWish.LACP, Keys.BUNDLE))
        .contains(Truth.YES);
    assertThat(same(Views.TRUNK, RoleKeys.BUNDLE, RoleKeys.BundleWish.STATIC, Keys.BUNDLE))
        .contains(Truth.NO);
    assertThat(same(Views.ACCESS, RoleKeys.BUNDLE, RoleKeys.BundleWish.NONE, Keys.BUNDLE))
        .contains(Truth.YES);
  }

  @Test
  void a_bundle_is_not_asked_to_be_a_member_of_one() {
    PortName name = PortName.of(PortKind.PORT_CHANNEL, 1);
    PortSettings trunk = Views.settings().port(Views.TRUNK).orElseThrow();
    PortSettings bundle =
        new PortSettings(
            name, "Port-channel1", trunk.header(), trunk.settings(), true, trunk.unknown());
    Map<RoleKey<?>, Object> lacp = Map.of(RoleKeys.BUNDLE, RoleKeys.BundleWish.LACP);
    assertThat(Wish.of(Keys.BUNDLE, Views.port(name, Views.role("r", lacp), "s"), bundle))
        .isEmpty();
  }

  @Test
  void what_the_text_does_not_tell_is_neither_equal_nor_different() {
    assertThat(same(Views.DOUBTFUL, RoleKeys.MODE, PortMode.ACCESS, Keys.MODE))
        .contains(Truth.UNKNOWN);
  }

  @Test
  void a_marking_that_no_line_trusts_is_as_designed_where_none_is() {
    Qos none = new Qos(Optional.of("none"), Optional.empty(), Optional.empty());
    assertThat(same(Views.ACCESS, RoleKeys.QOS, none, Keys.QOS_TRUST)).contains(Truth.YES);
    assertThat(same(Views.ACCESS, RoleKeys.QOS, none, Keys.POLICY_IN)).isEmpty();
  }

  @Test
  void a_description_is_held_against_the_pattern() {
    assertThat(same(Views.ACCESS, RoleKeys.DESCRIPTION, "*controller", Keys.DESCRIPTION))
        .contains(Truth.YES);
    assertThat(same(Views.ACCESS, RoleKeys.DESCRIPTION, "vmhost*", Keys.DESCRIPTION))
        .contains(Truth.NO);
  }

  @Test
  void a_setting_that_the_role_leaves_out_has_no_wish() {
    assertThat(same(Views.ACCESS, RoleKeys.MODE, PortMode.ACCESS, Keys.MTU)).isEmpty();
  }

  @Test
  void every_key_of_a_role_is_shown_beside_some_setting() {
    Map<RoleKey<?>, Object> all =
        Map.ofEntries(
            Map.entry(RoleKeys.MODE, PortMode.ACCESS),
            Map.entry(RoleKeys.ACCESS, Views.vlan("a", 2)),
            Map.entry(RoleKeys.VOICE, Views.vlan("v", 3)),
            Map.entry(RoleKeys.NATIVE, Views.vlan("n", 4)),
            Map.entry(RoleKeys.TAGGED, VlanSet.of(2)),
            Map.entry(RoleKeys.FAST_START, true),
            Map.entry(RoleKeys.BPDU_GUARD, true),
            Map.entry(RoleKeys.BPDU_FILTER, false),
            Map.entry(RoleKeys.ROOT_GUARD, false),
            Map.entry(RoleKeys.LOOP_GUARD, false),
            Map.entry(RoleKeys.UDLD, false),
            Map.entry(RoleKeys.BUNDLE, RoleKeys.BundleWish.NONE),
            Map.entry(RoleKeys.MIN_LINKS, 2),
            Map.entry(RoleKeys.NEGOTIATE, false),
            Map.entry(RoleKeys.NATIVE_TAGGING, false),
            Map.entry(
                RoleKeys.QOS, new Qos(Optional.of("none"), Optional.of("IN"), Optional.of("OUT"))),
            Map.entry(RoleKeys.SPEED, "auto"),
            Map.entry(RoleKeys.DUPLEX, "auto"),
            Map.entry(RoleKeys.MTU, 1500),
            Map.entry(RoleKeys.STORM_CONTROL, true),
            Map.entry(RoleKeys.PORT_SECURITY, false),
            Map.entry(RoleKeys.SNOOPING_TRUST, false),
            Map.entry(RoleKeys.DESCRIPTION, "*"));
    // may-carry only widens tagged and has no value of its own; marking is three settings
    assertThat(all.keySet()).hasSize(RoleKeys.ALL.size() - 1);
    PortSettings port = Views.settings().port(Views.ACCESS).orElseThrow();
    var designed = Views.port(Views.ACCESS, Views.role("all", all), "all");
    assertThat(Keys.ALL.stream().filter(key -> Wish.of(key, designed, port).isPresent()))
        .hasSize(all.size() + 2 + 1);
  }

  private static Truth tagged(Map<RoleKey<?>, Object> wishes) {
    PortSettings port = Views.settings().port(Views.TRUNK).orElseThrow();
    return Wish.of(Keys.ALLOWED, Views.port(Views.TRUNK, Views.role("r", wishes), "s"), port)
        .orElseThrow()
        .same();
  }

  private static Optional<Truth> same(PortName name, RoleKey<?> role, Object value, Key<?> key) {
    PortSettings port = Views.settings().port(name).orElseThrow();
    return Wish.of(key, Views.port(name, Views.role("r", Map.of(role, value)), "s"), port)
        .map(Wish::same);
  }
}
