package plumbline.run;

import java.util.List;

/** The rules that a design may switch off. */
final class RuleIds {
  /**
   * All ids that the design format promises, sorted: also those of rules that this version does not
   * have yet, so that one design serves several versions.
   */
  static final List<String> ALL =
      List.of(
          "access-vlan-differs",
          "bpdu-filter-set",
          "bpdu-guard-missing",
          "broadcast-domain-split",
          "bundle-differs",
          "bundle-member-differs",
          "change-not-saved",
          "config-missing",
          "config-stale",
          "config-truncated",
          "config-unreadable",
          "description-differs",
          "fast-start-missing",
          "fast-start-on-switch-link",
          "fast-start-without-effect",
          "gateway-filter-missing",
          "gateway-forbidden",
          "gateway-not-paired",
          "gateway-not-working",
          "gateway-undeclared",
          "gateway-unreachable",
          "guard-on-switch-link",
          "host-single-point",
          "link-bundle-clash",
          "link-mode-differs",
          "link-mtu-differs",
          "link-native-differs",
          "link-speed-duplex-differs",
          "link-vlans-differ",
          "mode-differs",
          "mst-region-differs",
          "mtu-differs",
          "native-vlan-differs",
          "native-vlan-in-use",
          "negotiation-open",
          "pair-differs",
          "pair-in-bundle",
          "pair-on-one-switch",
          "port-absent",
          "port-security-on-uplink",
          "port-setting-differs",
          "port-shut",
          "port-undeclared",
          "qos-differs",
          "root-unplanned",
          "service-single-point",
          "spanning-tree-mode-differs",
          "spanning-tree-off",
          "spare-port-open",
          "speed-duplex-differs",
          "statement-unknown",
          "switch-unknown",
          "tagged-vlan-extra",
          "tagged-vlan-missing",
          "takeover-path-lacks-vlan",
          "trunk-undeclared",
          "vlan-database-unknown",
          "vlan-inactive",
          "vlan-name-differs",
          "vlan-not-created",
          "vlan-undeclared",
          "vlans-joined",
          "voice-vlan-differs",
          "waiver-expired",
          "waiver-unused");

  private RuleIds() {}
}
