package plumbline.fabric;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import plumbline.fabric.Segment.End;

/**
 * An independent check of what a tree settles on: bridges that send, hear and remember messages in
 * rounds until nothing changes. It shares no code with the computed answer.
 */
final class Bridges {
  private static final Comparator<Message> ORDER =
      Comparator.comparing(Message::root, Bridges::compare)
          .thenComparingLong(Message::cost)
          .thenComparing(Message::sender, Bridges::compare)
          .thenComparing(Message::port);

  private final List<BridgeId> ids;
  private final List<Segment> segments;
  private final List<List<Message>> heard = new ArrayList<>();

  record Message(BridgeId root, long cost, BridgeId sender, PortId port) {}

  /** A message as it counts at the bridge that heard it. */
  record Vector(Message message, PortId on, int segment, int end) {}

  private Bridges(List<BridgeId> ids, List<Segment> segments) {
    this.ids = ids;
    this.segments = segments;
    for (Segment segment : segments) {
      List<Message> ends = new ArrayList<>();
      segment.ports().forEach(end -> ends.add(own(end.bridge(), end.id())));
      heard.add(ends);
    }
  }

  /** The role of each end of each segment, after the last message. */
  static List<List<PortRole>> run(List<BridgeId> ids, List<Segment> segments) {
    Bridges bridges = new Bridges(ids, segments);
    while (bridges.round()) {
      // until nothing new is heard
    }
    return bridges.roles();
  }

  private static int compare(BridgeId one, BridgeId other) {
    int byPriority = Integer.compare(one.priority(), other.priority());
    return byPriority != 0
        ? byPriority
        : Long.compare(one.address().getAsLong(), other.address().getAsLong());
  }

  private Message own(int bridge, PortId port) {
    return new Message(ids.get(bridge), 0, ids.get(bridge), port);
  }

  /** What the bridge knows of the root, with the cost of the port that heard it added. */
  private Vector best(int bridge) {
    Vector best = new Vector(own(bridge, new PortId(0, 0)), new PortId(0, 0), -1, -1);
    for (int segment = 0; segment < segments.size(); segment++) {
      List<End> ends = segments.get(segment).ports();
      for (int end = 0; end < ends.size(); end++) {
        if (ends.get(end).bridge() == bridge) {
          Message message = heard.get(segment).get(end);
          Message counted =
              new Message(
                  message.root(),
                  message.cost() + ends.get(end).cost(),
                  message.sender(),
                  message.port());
          Vector vector = new Vector(counted, ends.get(end).id(), segment, end);
          if (compare(vector, best) < 0 && compare(message.root(), ids.get(bridge)) < 0) {
            best = vector;
          }
        }
      }
    }
    return best;
  }

  private static int compare(Vector one, Vector other) {
    int order = ORDER.compare(one.message(), other.message());
    return order != 0 ? order : one.on().compareTo(other.on());
  }

  private Message toSend(int bridge, PortId port) {
    Vector best = best(bridge);
    return best.segment() < 0
        ? own(bridge, port)
        : new Message(best.message().root(), best.message().cost(), ids.get(bridge), port);
  }

  private boolean round() {
    boolean changed = false;
    for (int segment = 0; segment < segments.size(); segment++) {
      List<End> ends = segments.get(segment).ports();
      for (End sending : ends) {
        Message message = toSend(sending.bridge(), sending.id());
        for (int end = 0; end < ends.size(); end++) {
          if (ORDER.compare(message, heard.get(segment).get(end)) < 0) {
            heard.get(segment).set(end, message);
            changed = true;
          }
        }
      }
    }
    return changed;
  }

  private List<List<PortRole>> roles() {
    List<List<PortRole>> roles = new ArrayList<>();
    for (int segment = 0; segment < segments.size(); segment++) {
      List<End> ends = segments.get(segment).ports();
      List<PortRole> of = new ArrayList<>();
      for (int end = 0; end < ends.size(); end++) {
        End port = ends.get(end);
        Vector best = best(port.bridge());
        Message last = heard.get(segment).get(end);
        if (best.segment() == segment && best.end() == end) {
          of.add(PortRole.ROOT);
        } else if (ORDER.compare(toSend(port.bridge(), port.id()), last) <= 0) {
          of.add(PortRole.DESIGNATED);
        } else {
          boolean self = last.sender().equals(ids.get(port.bridge()));
          of.add(self ? PortRole.BACKUP : PortRole.ALTERNATE);
        }
      }
      roles.add(of);
    }
    return roles;
  }
}
