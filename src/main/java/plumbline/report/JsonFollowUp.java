package plumbline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Finding;
import plumbline.result.Accepted;
import plumbline.result.FollowUp;
import plumbline.result.Past;
import plumbline.result.Standing;
import plumbline.result.State;
import plumbline.result.Waiver;
import plumbline.vlan.VlanSet;

/** The parts of {@code plumbline-report/1} that tell of earlier runs and of waivers. */
final class JsonFollowUp {
  private final JsonGenerator json;
  private final JsonParts parts;
  private final FollowUp followUp;

  JsonFollowUp(JsonGenerator json, FollowUp followUp) {
    this.json = json;
    this.parts = new JsonParts(json);
    this.followUp = followUp;
  }

  /** Within {@code run}: the file of waivers, where there is one. */
  void ofRun() throws IOException {
    if (followUp.accepted().isEmpty()) {
      return;
    }
    Accepted accepted = followUp.accepted().get();
    json.writeObjectFieldStart("waivers");
    json.writeStringField("file", accepted.file());
    json.writeStringField("sha256", accepted.sha256());
    json.writeNumberField("count", accepted.count());
    json.writeNumberField("undecided", accepted.undecided());
    json.writeArrayFieldStart("ending");
    for (Waiver waiver : accepted.ending()) {
      waiver(waiver);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** Beside the verdict: the comparison with earlier runs, where a history is kept. */
  void history() throws IOException {
    if (followUp.past().isEmpty()) {
      return;
    }
    Past past = followUp.past().get();
    json.writeObjectFieldStart("history");
    if (past.before().isEmpty()) {
      json.writeNullField("before");
    } else {
      json.writeObjectFieldStart("before");
      json.writeStringField("file", past.before().get().file());
      json.writeStringField("at", moment(past.before().get().at()));
      json.writeEndObject();
    }
    json.writeArrayFieldStart("setAside");
    for (String line : past.setAside()) {
      json.writeString(line);
    }
    json.writeEndArray();
    json.writeObjectFieldStart("states");
    for (State state : State.values()) {
      json.writeNumberField(
          state.toString(),
          past.standings().values().stream().filter(one -> one.state() == state).count());
    }
    json.writeEndObject();
    json.writeArrayFieldStart("trend");
    for (Past.TrendPoint point : past.trend()) {
      json.writeStartObject();
      json.writeStringField("at", moment(point.at()));
      json.writeNumberField("breaks", point.breaks());
      json.writeNumberField("weakens", point.weakens());
      json.writeNumberField("unverified", point.unverified());
      json.writeNumberField("untidy", point.untidy());
      json.writeNumberField("waived", point.waived());
      json.writeNumberField("unchecked", point.unchecked());
      day("oldest", point.oldest());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  /** Within a finding: {@code state} and {@code since}; null where no history is kept. */
  void state(Finding finding) throws IOException {
    Optional<Standing> standing = followUp.past().map(past -> past.of(finding));
    if (standing.isPresent()) {
      json.writeStringField("state", standing.get().state().toString());
    } else {
      json.writeNullField("state");
    }
    day("since", standing.map(Standing::since));
  }

  /** Within a finding: VLANs that it was not about before. */
  void newVlans(Finding finding) throws IOException {
    parts.vlans(
        "newVlans", followUp.past().map(past -> past.of(finding).newVlans()).orElse(VlanSet.NONE));
  }

  /** Within a finding, where a history is kept: what it was, and why it is gone or unchecked. */
  void change(Finding finding) throws IOException {
    if (followUp.past().isEmpty()) {
      return;
    }
    Standing standing = followUp.past().get().of(finding);
    if (standing.before().isEmpty()) {
      json.writeNullField("before");
    } else {
      json.writeObjectFieldStart("before");
      json.writeStringField("severity", standing.before().get().severity().toString());
      parts.vlans("vlans", standing.before().get().vlans());
      json.writeEndObject();
    }
    parts.text("clearedBy", standing.clearedBy().map(Object::toString));
    parts.text("unchecked", Optional.of(standing.why()).filter(why -> !why.isEmpty()));
  }

  /** Within a finding: what waivers cover of it; null where none does. */
  void waiver(Finding finding) throws IOException {
    Optional<Accepted.Acceptance> acceptance =
        followUp
            .accepted()
            .flatMap(accepted -> accepted.of(finding))
            .filter(any -> isTold(finding));
    if (acceptance.isEmpty()) {
      json.writeNullField("waiver");
      return;
    }
    json.writeObjectFieldStart("waiver");
    json.writeBooleanField("whole", acceptance.get().whole());
    parts.vlans("vlans", acceptance.get().vlans());
    list("by", acceptance.get().by());
    list("tooLow", acceptance.get().tooLow().stream().toList());
    json.writeEndObject();
  }

  /** What is cleared needs no waiver, even if the place has one. */
  private boolean isTold(Finding finding) {
    return followUp.past().map(past -> past.of(finding).state() != State.CLEARED).orElse(true);
  }

  private void list(String name, List<Waiver> waivers) throws IOException {
    json.writeArrayFieldStart(name);
    for (Waiver waiver : waivers) {
      waiver(waiver);
    }
    json.writeEndArray();
  }

  private void waiver(Waiver waiver) throws IOException {
    json.writeStartObject();
    json.writeStringField("for", waiver.what());
    parts.vlans("vlans", waiver.vlans());
    json.writeStringField("severity", waiver.severity().toString());
    json.writeStringField("why", waiver.why());
    json.writeStringField("acceptedBy", waiver.acceptedBy());
    parts.text("ticket", waiver.ticket());
    json.writeStringField("until", waiver.until().toString());
    json.writeArrayFieldStart("renewed");
    for (LocalDate day : waiver.renewed()) {
      json.writeString(day.toString());
    }
    json.writeEndArray();
    json.writeStringField("file", waiver.at().file());
    json.writeNumberField("line", waiver.at().line());
    json.writeEndObject();
  }

  private void day(String name, Optional<LocalDate> day) throws IOException {
    parts.text(name, day.map(LocalDate::toString));
  }

  private static String moment(Instant at) {
    return DateTimeFormatter.ISO_INSTANT.format(at.truncatedTo(ChronoUnit.SECONDS));
  }
}
