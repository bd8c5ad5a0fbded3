package plumbline.inspect;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.effective.SwitchSettings;
import plumbline.effective.UnknownLine;
import plumbline.effective.VlanDatabase;
import plumbline.setting.Bundle;
import plumbline.setting.Carried;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;
import plumbline.text.Json;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;
import plumbline.wish.Wish;

/** Effective settings for programs: {@code plumbline-settings/1}, see docs/schema. */
public final class SettingsJson {
  private static final String FORMAT = "plumbline-settings/1";
  private static final String UNKNOWN = "unknown";

  private final JsonGenerator json;

  private SettingsJson(JsonGenerator json) {
    this.json = json;
  }

  /** Indented JSON that ends in a line feed. */
  public static String of(List<SwitchView> switches) {
    return Json.write(json -> new SettingsJson(json).write(switches));
  }

  private void write(List<SwitchView> switches) throws IOException {
    json.writeStartObject();
    json.writeStringField("format", FORMAT);
    json.writeArrayFieldStart("switches");
    for (SwitchView view : switches) {
      write(view);
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void write(SwitchView view) throws IOException {
    SwitchSettings settings = view.settings();
    json.writeStartObject();
    json.writeStringField("switch", view.name());
    json.writeStringField("file", settings.file());
    json.writeStringField("dialect", settings.dialect().word());
    json.writeStringField("dialectReason", settings.dialectReason());
    json.writeStringField("vlanDatabase", settings.vlans().known() ? "known" : UNKNOWN);
    json.writeArrayFieldStart("vlans");
    for (VlanDatabase.Entry entry : settings.vlans().entries().values()) {
      json.writeStartObject();
      json.writeNumberField("id", entry.id().number());
      value("name", entry.name());
      value("active", entry.active());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("ports");
    for (PortSettings port : view.ports()) {
      port(view, port);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("gateways");
    for (Gateway gateway : settings.gateways()) {
      gateway(gateway);
    }
    json.writeEndArray();
    notUnderstood(settings.unknownElsewhere());
    json.writeEndObject();
  }

  private void notUnderstood(List<UnknownLine> lines) throws IOException {
    json.writeArrayFieldStart("notUnderstood");
    for (UnknownLine line : lines) {
      json.writeStartObject();
      json.writeNumberField("line", line.line());
      json.writeStringField("firstWord", line.firstWord());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void port(SwitchView view, PortSettings port) throws IOException {
    json.writeStartObject();
    json.writeStringField("name", port.fullName());
    for (Key<?> key : Keys.ALL) {
      value(camelCase(key), port.get(key));
    }
    if (port.allowedFromDefault().isPresent()) {
      json.writeStringField("allowedFromDefault", list(port.allowedFromDefault().get()));
    }
    notUnderstood(port.unknown());
    json.writeObjectFieldStart("evidence");
    for (Key<?> key : Keys.ALL) {
      evidence(camelCase(key), port.get(key).evidence());
    }
    json.writeEndObject();
    if (view.designed().containsKey(port.name())) {
      designed(view, port);
    }
    json.writeEndObject();
  }

  private void evidence(String name, List<Evidence> evidence) throws IOException {
    json.writeArrayFieldStart(name);
    for (Evidence one : evidence) {
      json.writeStartObject();
      if (one instanceof Evidence.Line line) {
        json.writeNumberField("line", line.line());
        json.writeStringField("text", line.text());
      } else if (one instanceof Evidence.Default standard) {
        json.writeStringField("default", standard.name());
      }
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void designed(SwitchView view, PortSettings port) throws IOException {
    json.writeObjectFieldStart("designed");
    for (Key<?> key : Keys.ALL) {
      Optional<Wish> wish = view.wish(port, key);
      if (wish.isPresent()) {
        json.writeObjectFieldStart(camelCase(key));
        json.writeStringField("value", wish.get().words());
        switch (wish.get().same()) {
          case YES -> json.writeBooleanField("same", true);
          case NO -> json.writeBooleanField("same", false);
          case UNKNOWN -> json.writeStringField("same", UNKNOWN);
        }
        json.writeStringField("file", wish.get().at().file());
        json.writeNumberField("line", wish.get().at().line());
        json.writeEndObject();
      }
    }
    json.writeEndObject();
  }

  private void gateway(Gateway gateway) throws IOException {
    json.writeStartObject();
    json.writeNumberField("vlan", gateway.vlan().number());
    addresses(gateway.addresses());
    value("shut", gateway.shut());
    json.writeArrayFieldStart("groups");
    for (Gateway.Group group : gateway.groups()) {
      json.writeStartObject();
      json.writeStringField("kind", group.kind().toString());
      json.writeNumberField("id", group.id());
      value("address", group.address());
      value("priority", group.priority());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void addresses(Setting<List<String>> addresses) throws IOException {
    json.writeFieldName("addresses");
    if (!addresses.isDecided()) {
      json.writeString(UNKNOWN);
      return;
    }
    json.writeStartArray();
    for (String address : addresses.value().orElse(List.of())) {
      json.writeString(address);
    }
    json.writeEndArray();
  }

  /** {@code null} for what is not set, {@code "unknown"} for what the text does not tell. */
  private void value(String name, Setting<?> setting) throws IOException {
    json.writeFieldName(name);
    if (!setting.isDecided()) {
      json.writeString(UNKNOWN);
    } else if (setting.value().isEmpty()) {
      json.writeNull();
    } else {
      value(setting.value().get());
    }
  }

  private void value(Object value) throws IOException {
    if (value instanceof Boolean flag) {
      json.writeBoolean(flag);
    } else if (value instanceof VlanId vlan) {
      json.writeNumber(vlan.number());
    } else if (value instanceof Number number) {
      json.writeNumber(number.longValue());
    } else if (value instanceof VlanSet vlans) {
      json.writeString(list(vlans));
    } else if (value instanceof Carried carried) {
      json.writeString(carried.undecided().isEmpty() ? list(carried.certain()) : UNKNOWN);
    } else if (value instanceof Bundle bundle) {
      json.writeStartObject();
      json.writeNumberField("id", bundle.id());
      json.writeStringField("mode", bundle.mode().toString());
      json.writeEndObject();
    } else if (value instanceof VoiceVlan voice && voice.vlan().isPresent()) {
      json.writeNumber(voice.vlan().get().number());
    } else {
      json.writeString(value == PortMode.OTHER ? UNKNOWN : value.toString());
    }
  }

  private static String list(VlanSet vlans) {
    return vlans.isEmpty() ? "" : vlans.toString();
  }

  private static String camelCase(Key<?> key) {
    StringBuilder name = new StringBuilder();
    for (String part : key.name().split("-", -1)) {
      name.append(
          name.isEmpty()
              ? part
              : part.substring(0, 1).toUpperCase(Locale.ROOT) + part.substring(1));
    }
    return name.toString();
  }
}
