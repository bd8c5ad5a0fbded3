package plumbline.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.fabric.TreePart;
import plumbline.fabric.TreeScope;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.RootUnplanned.Upset;
import plumbline.setting.Evidence;

/** Tells of plans that were upset at one place: by one switch, or because of one. */
final class RootWords {
  private final FabricCase network;
  private final PlannedTrees trees;
  private final Subject subject;
  private final List<Upset> all;

  RootWords(FabricCase network, PlannedTrees trees, Subject subject, List<Upset> all) {
    this.network = network;
    this.trees = trees;
    this.subject = subject;
    this.all = all;
  }

  /** Evidence of one switch; without a line, the head of the text comes before the default. */
  static List<Proof> proofs(SwitchCase device, List<Evidence> evidence) {
    List<Evidence> all = new ArrayList<>();
    if (evidence.stream().noneMatch(Evidence.Line.class::isInstance)) {
      device.settings().hostname().evidence().stream()
          .filter(Evidence.Line.class::isInstance)
          .forEach(all::add);
    }
    all.addAll(evidence);
    return device.proofs(all);
  }

  Candidate candidate() {
    return Candidate.of(
            subject,
            joined(this::designed),
            joined(this::found),
            consequence(),
            proofs(),
            Optional.of(all.get(0).at()))
        .about(RootUnplanned.vlans(all))
        .beside(others());
  }

  /** The wording of each kind, for the VLANs that it is the same for. */
  private String joined(java.util.function.BiFunction<Upset, String, String> words) {
    Map<String, List<Upset>> kinds = new LinkedHashMap<>();
    for (Upset one : all) {
      kinds.computeIfAbsent(words.apply(one, "?"), any -> new ArrayList<>()).add(one);
    }
    return kinds.values().stream()
        .map(kind -> words.apply(kind.get(0), vlans(kind)))
        .distinct()
        .collect(Collectors.joining("; "));
  }

  private String vlans(List<Upset> some) {
    return Words.vlans(network.design(), RootUnplanned.vlans(some));
  }

  private String designed(Upset one, String vlans) {
    return planned(one)
        + " the root of "
        + vlans
        + one.taken().failed().map(root -> " when " + root + " fails").orElse("");
  }

  private String found(Upset one, String vlans) {
    String by = one.taken().by();
    int own = priority(planned(one), one);
    int other = priority(by, one);
    String place =
        one.taken().isSure()
            ? by + " is the root of " + vlans
            : by + " comes before " + planned(one) + " in " + vlans;
    return place
        + one.taken().failed().filter(root -> one.taken().isSure()).map(any -> " then").orElse("")
        + (own == other
            ? ": both have priority " + own + ", and its bridge address is lower"
            : ": its priority is " + other + ", that of " + planned(one) + " " + own);
  }

  private int priority(String name, Upset one) {
    return trees.priority(name, one.taken().scope()).value().value().orElseThrow();
  }

  private static String planned(Upset one) {
    return one.planned().designed().name();
  }

  private List<Place> others() {
    return all.stream()
        .flatMap(one -> Stream.of(planned(one), one.taken().by()))
        .distinct()
        .filter(name -> !name.equals(subject.switchName()))
        .map(Place::ofSwitch)
        .toList();
  }

  private List<Proof> proofs() {
    Map<String, List<Evidence>> lines = new LinkedHashMap<>();
    lines.put(subject.switchName(), new ArrayList<>());
    for (Upset one : all) {
      for (String name : List.of(planned(one), one.taken().by())) {
        lines
            .computeIfAbsent(name, any -> new ArrayList<>())
            .addAll(trees.priority(name, one.taken().scope()).value().evidence());
      }
    }
    return lines.entrySet().stream()
        .flatMap(one -> proofs(network.at(one.getKey()).orElseThrow(), one.getValue()).stream())
        .distinct()
        .toList();
  }

  private String consequence() {
    Upset first = all.get(0);
    List<String> sentences = new ArrayList<>();
    sentences.add(paths(first));
    moved(first).ifPresent(sentences::add);
    sentences.add(whereToLook(first));
    return String.join(" ", sentences);
  }

  private String paths(Upset first) {
    String by = Words.list(all.stream().map(one -> one.taken().by()).distinct().toList());
    String instead = Words.list(all.stream().map(RootWords::planned).distinct().toList());
    String them = all.size() == 1 ? "this VLAN" : "these VLANs";
    String when = first.taken().failed().map(root -> "When " + root + " fails, t").orElse("T");
    List<DesignPort> barring = first.taken().part().barring();
    if (!barring.isEmpty()) {
      return "The root guard at "
          + Words.list(barring.stream().map(this::name).toList())
          + " blocks "
          + them
          + " there for as long as "
          + by
          + " claims the root's place: nothing of "
          + Words.them(all.size())
          + " crosses.";
    }
    return first.taken().isSure()
        ? when + "he paths of " + them + " are laid towards " + by + " instead of " + instead + "."
        : when
            + "he paths of "
            + them
            + " are not laid towards "
            + instead
            + ", and which switch is the root the texts do not tell.";
  }

  private String name(DesignPort port) {
    return port.switchName()
        + " "
        + network.at(port.switchName()).orElseThrow().settings().fullName(port.port());
  }

  /** What blocks that would forward as planned, of the first tree. */
  private Optional<String> moved(Upset first) {
    TreePart part = first.taken().part();
    TreeMoves moves =
        new TreeMoves(network.sides().repaired(), part, part.withRoot(planned(first)));
    boolean several = all.stream().map(one -> tree(one.taken().scope())).distinct().count() > 1;
    return moves
        .sentence()
        .map(words -> (several ? "In " + first.vlan() + ", for one, " : "") + words)
        .map(
            words -> words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1));
  }

  private static Object tree(TreeScope scope) {
    return scope.instance().isPresent() ? scope.instance() : scope.vlan();
  }

  private String whereToLook(Upset first) {
    String here = subject.switchName();
    if (!here.equals(planned(first))) {
      return "Look at " + here + " first: the design plans no root and no second there.";
    }
    boolean silent =
        all.stream()
            .flatMap(one -> trees.priority(here, one.taken().scope()).value().evidence().stream())
            .noneMatch(Evidence.Line.class::isInstance);
    return "Look at "
        + here
        + " first: "
        + (silent ? "no line gives it a priority." : "its priority is not the lowest.");
  }
}
