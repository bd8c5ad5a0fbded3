package plumbline.history;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Optional;
import plumbline.history.RunReader.NoRun;

/** Reads objects and lists from a stream of JSON; what is not expected there is refused. */
final class JsonObjects {
  private final JsonParser parser;

  JsonObjects(JsonParser parser) {
    this.parser = parser;
  }

  /** Reads one field's value, which is the current token, to its end. */
  @FunctionalInterface
  interface Field {
    /** Returns whether to go on with the object. */
    boolean read(String name) throws IOException, NoRun;
  }

  /** Reads one value, which is the current token, to its end. */
  @FunctionalInterface
  interface Item {
    void read() throws IOException, NoRun;
  }

  /** Goes to the next token; null at the end of the text. */
  JsonToken next() throws IOException {
    return parser.nextToken();
  }

  /** Reads an object; says whether all of it was read. */
  boolean object(Field field) throws IOException, NoRun {
    if (parser.currentToken() != JsonToken.START_OBJECT) {
      throw unfit();
    }
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String name = parser.currentName();
      parser.nextToken();
      if (!field.read(name)) {
        return false;
      }
    }
    return true;
  }

  /** Reads a list. */
  void array(Item item) throws IOException, NoRun {
    if (parser.currentToken() != JsonToken.START_ARRAY) {
      throw unfit();
    }
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      item.read();
    }
  }

  /** A text. */
  String text() throws IOException, NoRun {
    return textOrNull().orElseThrow(JsonObjects::unfit);
  }

  /** A text; empty for null. */
  Optional<String> textOrNull() throws IOException, NoRun {
    if (parser.currentToken() == JsonToken.VALUE_NULL) {
      return Optional.empty();
    }
    if (parser.currentToken() != JsonToken.VALUE_STRING) {
      throw unfit();
    }
    return Optional.of(parser.getText());
  }

  /** A whole number. */
  int whole() throws IOException, NoRun {
    if (parser.currentToken() != JsonToken.VALUE_NUMBER_INT) {
      throw unfit();
    }
    return parser.getIntValue();
  }

  /** Whether the value is null. */
  boolean isNull() {
    return parser.currentToken() == JsonToken.VALUE_NULL;
  }

  /** Passes over the value. */
  void skip() throws IOException {
    parser.skipChildren();
  }

  private static NoRun unfit() {
    return new NoRun(RunReader.DAMAGED);
  }
}
