package plumbline.promise;

import plumbline.fabric.Failure;

/** Tells the failure of a member's own cable apart from others, so that answers can be shared. */
final class Cables {
  private Cables() {}

  /** The failure; for the cable of one of the member's plugs that plug's index. */
  static Object when(Member member, Failure failure) {
    for (int plug = 0; plug < member.plugs().size(); plug++) {
      if (member.plugs().get(plug).isCut(failure)) {
        return plug;
      }
    }
    return failure;
  }

  /** The failure that {@link #when} stands for, of another member. */
  static Failure failure(Member member, Object when) {
    if (when instanceof Failure failure) {
      return failure;
    }
    Plug plug = member.plugs().get((Integer) when);
    return new Failure.OfPort(plug.point().switchName(), plug.point().port());
  }
}
