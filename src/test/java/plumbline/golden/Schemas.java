package plumbline.golden;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Validates documents with an independent JSON Schema implementation (2020-12). */
public final class Schemas {
  private Schemas() {}

  /** What is wrong with a document, by the schema of that name in docs/schema. */
  public static List<String> problems(String schema, String json) {
    try {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(Files.readString(Path.of("docs/schema", schema)), InputFormat.JSON)
          .validate(json, InputFormat.JSON)
          .stream()
          .map(Error::toString)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
