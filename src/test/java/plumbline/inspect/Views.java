package plumbline.inspect;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.design.Role;
import plumbline.design.RoleKey;
import plumbline.design.RoleKeys;
import plumbline.design.Wanted;
import plumbline.effective.Dialect;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.effective.SpanningTree;
import plumbline.effective.SwitchSettings;
import plumbline.effective.UnknownLine;
import plumbline.effective.VlanDatabase;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.Carried;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;
import plumbline.statement.PortCommand;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/** Switches made by hand, for tests of every form of the settings command. */
final class Views {
  static final PortName TRUNK = PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 1);
  static final PortName ACCESS = PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 2);
  static final PortName DOUBTFUL = PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 3);
  static final PortName UNOPENED = PortName.of(PortKind.GIGABIT_ETHERNET, 1, 0, 9);

  private static final Evidence STANDARD = new Evidence.Default("campus: off unless set");

  private Views() {}

  static SwitchView plain() {
    return SwitchView.of("NORTH-SW1", settings(), Map.of());
  }

  static SwitchView designed() {
    Map<PortName, DesignPort> ports = new HashMap<>();
    ports.put(TRUNK, port(TRUNK, uplink(), "vmhost-n1 nic0"));
    ports.put(ACCESS, port(ACCESS, controller(), "vmhost-n1 controller"));
    ports.put(UNOPENED, port(UNOPENED, controller(), "vmhost-n2 controller"));
    return SwitchView.of("north-sw1", settings(), ports);
  }

  static DesignPort port(PortName name, Role role, String subject) {
    return new DesignPort(
        "north-sw1",
        name,
        role,
        subject,
        DesignPort.Place.HOST,
        new Position("design.yaml", 33, 14));
  }

  static Role role(String name, Map<RoleKey<?>, Object> wishes) {
    Map<RoleKey<?>, Wanted<?>> wanted = new HashMap<>();
    wishes.forEach(
        (key, value) -> wanted.put(key, new Wanted<>(value, new Position("design.yaml", 21, 9))));
    return new Role(name, new Position("design.yaml", 21, 3), wanted);
  }

  private static Role uplink() {
    return role(
        "host-uplink",
        Map.of(
            RoleKeys.MODE,
            PortMode.TRUNK,
            RoleKeys.NATIVE,
            vlan("parked", 999),
            RoleKeys.TAGGED,
            VlanSet.of(220, 231),
            RoleKeys.FAST_START,
            true,
            RoleKeys.BUNDLE,
            RoleKeys.BundleWish.NONE));
  }

  private static Role controller() {
    return role(
        "controller-port",
        Map.of(
            RoleKeys.MODE,
            PortMode.ACCESS,
            RoleKeys.ACCESS,
            vlan("lights-out", 210),
            RoleKeys.FAST_START,
            true,
            RoleKeys.DESCRIPTION,
            "*controller*"));
  }

  static DesignVlan vlan(String name, int id) {
    return new DesignVlan(
        name,
        new VlanId(id),
        DesignVlan.GatewayNeed.OPTIONAL,
        false,
        false,
        false,
        false,
        List.of(),
        Optional.empty(),
        new Position("design.yaml", 4, 3));
  }

  static SwitchSettings settings() {
    TreeMap<PortName, PortSettings> ports = new TreeMap<>();
    ports.put(TRUNK, trunk());
    ports.put(ACCESS, access());
    ports.put(DOUBTFUL, doubtful());
    TreeMap<VlanId, VlanDatabase.Entry> vlans = new TreeMap<>();
    vlans.put(VlanId.DEFAULT, entry(1, Setting.absent(STANDARD), true));
    vlans.put(
        new VlanId(210),
        entry(210, Setting.known("LIGHTS-OUT", line(11, "name LIGHTS-OUT")), true));
    vlans.put(
        new VlanId(999), entry(999, Setting.known("=PARKED", line(14, "name =PARKED")), false));
    return new SwitchSettings(
        "NORTH-SW1",
        Setting.known("NORTH-SW1", line(3, "hostname NORTH-SW1")),
        "configs/north-sw1.cfg",
        Dialect.CAMPUS,
        "its ports are numbered 1/0/n",
        false,
        Optional.empty(),
        SwitchText.Times.NONE,
        new VlanDatabase(true, "the mode is transparent (line 8)", vlans),
        ports,
        new TreeMap<>(),
        List.of(gateway()),
        new SpanningTree(
            Setting.known(
                SwitchCommand.TreeMode.Mode.RAPID_PVST, line(20, "spanning-tree mode rapid-pvst")),
            Setting.known(false, STANDARD),
            Setting.absent(STANDARD),
            new TreeMap<>(),
            new TreeMap<>(),
            new SpanningTree.Priority(
                Setting.known(32768, STANDARD), SpanningTree.Priority.Asked.NUMBER),
            new SpanningTree.Region(
                Setting.absent(STANDARD),
                Setting.absent(STANDARD),
                new TreeMap<>(),
                Optional.empty(),
                List.of())),
        Setting.known(true, line(6, "ip routing")),
        List.of(),
        List.of(new UnknownLine(9, "frobnicate"), new UnknownLine(12, "ipx")),
        40,
        214);
  }

  private static VlanDatabase.Entry entry(int id, Setting<String> name, boolean active) {
    return new VlanDatabase.Entry(new VlanId(id), name, Setting.known(active, STANDARD));
  }

  private static Gateway gateway() {
    return new Gateway(
        new VlanId(210),
        PortName.of(PortKind.VLAN, 210),
        new Evidence.Line(150, "interface Vlan210"),
        Setting.known(
            List.of("192.0.2.2 255.255.255.0"), line(151, "ip address 192.0.2.2 255.255.255.0")),
        Setting.known(false, STANDARD),
        Setting.known(true, STANDARD),
        Setting.known(false, STANDARD),
        Setting.known(true),
        List.of(
            new Gateway.Group(
                PortCommand.Redundancy.Kind.VRRP,
                210,
                Setting.known(2, STANDARD),
                Setting.known("192.0.2.1", line(152, "vrrp 210 ip 192.0.2.1")),
                false,
                Setting.known(110, line(153, "vrrp 210 priority 110")),
                Setting.known(true, STANDARD),
                false)),
        Setting.known(true, STANDARD),
        List.of());
  }

  private static PortSettings trunk() {
    Map<Key<?>, Setting<?>> all = base();
    all.put(Keys.MODE, Setting.known(PortMode.TRUNK, line(42, "switchport mode trunk")));
    all.put(Keys.ACCESS_VLAN, Setting.known(VlanId.DEFAULT, STANDARD));
    all.put(
        Keys.NATIVE_VLAN,
        Setting.known(VlanId.DEFAULT, new Evidence.Default("campus: native VLAN 1")));
    Evidence.Line list =
        line(41, "switchport trunk allowed vlan 220,231,500,501,502,503,504,505,506,507");
    all.put(Keys.ALLOWED, Setting.known(VlanSet.of(220, 231, 500), list));
    all.put(Keys.CARRIED, Setting.known(new Carried(VlanSet.of(220), VlanSet.of(220, 231)), list));
    all.put(
        Keys.FAST_START, Setting.known(Effect.WITHOUT_EFFECT, line(43, "spanning-tree portfast")));
    all.put(
        Keys.BUNDLE,
        Setting.known(new Bundle(1, Bundle.Mode.ACTIVE), line(44, "channel-group 1 mode active")));
    return new PortSettings(
        TRUNK,
        "GigabitEthernet1/0/1",
        line(40, "interface GigabitEthernet1/0/1"),
        all,
        true,
        List.of(new UnknownLine(45, "frobnicate")));
  }

  private static PortSettings access() {
    Map<Key<?>, Setting<?>> all = base();
    all.put(Keys.MODE, Setting.known(PortMode.ACCESS, line(52, "switchport mode access")));
    all.put(
        Keys.ACCESS_VLAN, Setting.known(new VlanId(210), line(51, "switchport access vlan 210")));
    all.put(
        Keys.VOICE_VLAN,
        Setting.known(
            new VoiceVlan(VoiceVlan.Kind.DOT1P, Optional.empty()),
            line(53, "switchport voice vlan dot1p")));
    all.put(Keys.NATIVE_VLAN, Setting.known(VlanId.DEFAULT, STANDARD));
    all.put(Keys.ALLOWED, Setting.known(VlanSet.ALL, STANDARD));
    all.put(
        Keys.CARRIED,
        Setting.known(Carried.exactly(VlanSet.of(210)), line(51, "switchport access vlan 210")));
    all.put(Keys.FAST_START, Setting.known(Effect.ON, line(54, "spanning-tree portfast")));
    all.put(
        Keys.DESCRIPTION,
        Setting.known("@vmhost-n1 controller", line(50, "description @vmhost-n1 controller")));
    return new PortSettings(
        ACCESS,
        "GigabitEthernet1/0/2",
        line(49, "interface GigabitEthernet1/0/2"),
        all,
        true,
        List.of());
  }

  /** A switch with one port of this description. */
  static SwitchView described(String words) {
    PortSettings one = access();
    Map<Key<?>, Setting<?>> all = new HashMap<>(one.settings());
    all.put(Keys.DESCRIPTION, Setting.known(words, line(50, "description " + words)));
    PortSettings port =
        new PortSettings(
            one.name(), one.fullName(), one.header(), all, one.hasSwitchingLine(), one.unknown());
    return new SwitchView("NORTH-SW1", settings(), List.of(port), Map.of(), false);
  }

  private static PortSettings doubtful() {
    Map<Key<?>, Setting<?>> all = base();
    all.put(Keys.MODE, Setting.unknown("the text is a script", line(60, "interface Gi1/0/3")));
    all.put(Keys.CARRIED, Setting.unknown("its mode is unknown"));
    return new PortSettings(
        DOUBTFUL, "GigabitEthernet1/0/3", line(60, "interface Gi1/0/3"), all, false, List.of());
  }

  private static Map<Key<?>, Setting<?>> base() {
    Map<Key<?>, Setting<?>> all = new HashMap<>();
    Keys.ALL.forEach(key -> all.put(key, Setting.absent(STANDARD)));
    all.put(Keys.SHUT, Setting.known(false, new Evidence.Default("campus: a port is open")));
    all.put(Keys.NEGOTIATE, Setting.known(true, new Evidence.Default("campus: negotiation open")));
    return all;
  }

  static Evidence.Line line(int number, String text) {
    return new Evidence.Line(number, text);
  }
}
