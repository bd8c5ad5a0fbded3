package plumbline.promise;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import plumbline.design.DesignGateway;
import plumbline.design.DesignPort;
import plumbline.design.Link;
import plumbline.fabric.Fabric;
import plumbline.fabric.FabricLink;
import plumbline.finding.Place;
import plumbline.port.PortKind;
import plumbline.port.PortName;

/** Says where the findings are that may tell of a fault. */
public final class FaultPlaces {
  private final Fabric fabric;
  private final FailureWords words;

  /** Places in one network. */
  public FaultPlaces(Fabric fabric) {
    this.fabric = fabric;
    this.words = new FailureWords(fabric);
  }

  /** The ports with their bundles and members, and the switches as a whole. */
  public Set<Place> of(Fault fault) {
    Set<Place> places = new LinkedHashSet<>();
    if (fault instanceof Fault.OfLink one) {
      fabric.links().get(one.link()).ends().forEach(end -> add(places, end.port()));
    } else if (fault instanceof Fault.OfBundle one) {
      FabricLink link = fabric.links().get(one.link());
      link.ends().forEach(end -> add(places, end.port()));
      for (Link.Member member : link.design().members()) {
        add(places, member.first());
        member.second().ifPresent(second -> add(places, second));
      }
    } else if (fault instanceof Fault.OfPlug one) {
      add(places, one.point().switchName(), one.point().port());
    } else if (fault instanceof Fault.OfSwitch one) {
      places.add(Place.ofSwitch(one.name()));
    } else if (fault instanceof Fault.OfRouter one) {
      router(places, one);
    }
    return places;
  }

  private void router(Set<Place> places, Fault.OfRouter fault) {
    DesignGateway gateway = fabric.design().gateways().get(fault.name());
    List<DesignPort> outside = gateway.outside();
    outside.forEach(port -> add(places, port));
    if (outside.isEmpty()) {
      add(places, fault.name(), PortName.of(PortKind.VLAN, fault.vlan().number()));
      fabric.settings(fault.name()).stream()
          .flatMap(device -> device.gateways().stream())
          .filter(one -> one.vlan().equals(fault.vlan()))
          .forEach(one -> add(places, fault.name(), one.port()));
    }
  }

  private void add(Set<Place> places, DesignPort port) {
    add(places, port.switchName(), port.port());
  }

  private void add(Set<Place> places, String switchName, PortName port) {
    places.add(Place.ofPort(switchName, words.fullName(switchName, port)));
    // the lines of members count for a bundle without a stanza
    fabric.settings(switchName).filter(device -> device.port(port).isEmpty()).stream()
        .flatMap(device -> device.membersOf(port).stream())
        .forEach(member -> places.add(Place.ofPort(switchName, member.fullName())));
    places.add(Place.ofSwitch(switchName));
  }
}
