package plumbline.window;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.port.PortName;
import plumbline.result.Change;
import plumbline.setting.Evidence;
import plumbline.vlan.VlanSet;

/** Puts judged points into words that reports show. */
final class Changes {
  private static final Comparator<Change> ORDER =
      Comparator.comparing((Change change) -> change.place().switchName())
          .thenComparing(
              change -> change.portOrder().orElse(null),
              Comparator.nullsFirst(Comparator.<PortName>naturalOrder()))
          .thenComparing(Change::setting)
          .thenComparing(change -> change.vlans().ids().findFirst().orElse(0))
          .thenComparing(Change::kind);

  private Changes() {}

  /** The changes of a switch, by port (numeric), setting, VLANs. */
  static List<Change> of(SwitchWindow window, Design design, List<Judged> judged) {
    return joined(judged.stream().map(one -> change(window, design, one)).toList());
  }

  private static Change change(SwitchWindow window, Design design, Judged judged) {
    Point point = judged.point();
    Optional<PortName> port = point.port();
    return new Change(
        port.map(name -> Place.ofPort(window.name(), window.after().settings().fullName(name)))
            .orElseGet(() -> Place.ofSwitch(window.name())),
        port,
        port.flatMap(name -> new PortAims(design, window).designed(name))
            .map(DesignPort::subject)
            .orElse(""),
        point.setting(),
        judged.vlans(),
        Values.words(point.before()),
        Values.words(point.after()),
        judged.designed().map(Aim::words),
        judged.kind(),
        proofs(window.before(), judged.evidenceBefore()),
        proofs(window.after(), judged.evidenceAfter()),
        judged.at());
  }

  private static List<Proof> proofs(Side side, List<Evidence> evidence) {
    return evidence.stream().map(one -> Proof.of(side.settings().file(), one)).toList();
  }

  /** VLANs of which the same is to be said are one change. */
  private static List<Change> joined(List<Change> changes) {
    Map<Object, List<Change>> alike = new LinkedHashMap<>();
    for (Change one : changes) {
      alike
          .computeIfAbsent(
              List.of(
                  one.place(),
                  one.setting(),
                  one.before(),
                  one.after(),
                  one.designed(),
                  one.kind(),
                  one.vlans().isEmpty()),
              any -> new ArrayList<>())
          .add(one);
    }
    return alike.values().stream().map(Changes::joinedOnes).sorted(ORDER).toList();
  }

  private static Change joinedOnes(List<Change> alike) {
    Change first = alike.get(0);
    return new Change(
        first.place(),
        first.portOrder(),
        first.subject(),
        first.setting(),
        alike.stream().map(Change::vlans).reduce(VlanSet.NONE, VlanSet::plus),
        first.before(),
        first.after(),
        first.designed(),
        first.kind(),
        alike.stream()
            .flatMap(one -> one.evidenceBefore().stream())
            .distinct()
            .collect(Collectors.toList()),
        alike.stream()
            .flatMap(one -> one.evidenceAfter().stream())
            .distinct()
            .collect(Collectors.toList()),
        first.design());
  }
}
