package plumbline.promise;

import plumbline.design.DesignPort;
import plumbline.fabric.Cable;
import plumbline.fabric.Fabric;
import plumbline.fabric.FabricLink;
import plumbline.fabric.Failure;
import plumbline.port.PortName;
import plumbline.vlan.VlanId;

/** Names failures and places of a network, as parts of a sentence. */
public final class FailureWords {
  private final Fabric fabric;

  /** Words for one network. */
  public FailureWords(Fabric fabric) {
    this.fabric = fabric;
  }

  /** What fails, as the subject of a sentence: {@code north-sw1}, {@code the link a X to b Y}. */
  public String of(Failure failure) {
    if (failure instanceof Failure.OfSwitch down) {
      return down.member().isPresent()
          ? "member " + down.member().getAsInt() + " of " + down.name()
          : down.name();
    }
    if (failure instanceof Failure.OfLink cut) {
      FabricLink link = fabric.links().get(cut.link());
      return "the link " + port(link.first().port()) + " to " + port(link.second().port());
    }
    if (failure instanceof Failure.OfCable cut) {
      FabricLink link = fabric.links().get(cut.link());
      Cable cable = link.cables().get(cut.cable());
      return "the cable "
          + port(link.first().port().switchName(), cable.first())
          + " to "
          + port(link.second().port().switchName(), cable.second());
    }
    if (failure instanceof Failure.OfPort cut) {
      return "the cable at " + port(cut.switchName(), cut.port());
    }
    if (failure instanceof Failure.OfHost host) {
      return host.name();
    }
    if (failure instanceof Failure.OfGateway gateway) {
      return "the gateway " + gateway.name();
    }
    return failure instanceof Failure.OfVlan vlan ? vlan(vlan.vlan()) : "nothing";
  }

  /** A VLAN with its name, where it has one. */
  public String vlan(VlanId vlan) {
    return fabric.design().vlan(vlan).map(Object::toString).orElse("VLAN " + vlan);
  }

  /** A port with its switch. */
  String port(DesignPort port) {
    return port(port.switchName(), port.port());
  }

  private String port(String switchName, PortName port) {
    return switchName + " " + fullName(switchName, port);
  }

  /** A port's name in the dialect of its switch. */
  String fullName(String switchName, PortName port) {
    return fabric.settings(switchName).map(device -> device.fullName(port)).orElse(port.toString());
  }
}
