package plumbline.golden;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Validates documents with an independent JSON Schema implementation. */
public final class Schemas {
  private static final Map<Path, Schema> READ = new ConcurrentHashMap<>();

  private Schemas() {}

  /** What is wrong with a document, by the schema of that name in docs/schema (2020-12). */
  public static List<String> problems(String schema, String json) {
    return problems(Path.of("docs/schema", schema), SpecificationVersion.DRAFT_2020_12, json);
  }

  /** What is wrong with a SARIF document, by the schema that OASIS published (draft 7). */
  public static List<String> problemsOfSarif(String json) {
    return problems(
        Path.of("testdata/sarif/sarif-schema-2.1.0.json"), SpecificationVersion.DRAFT_7, json);
  }

  private static List<String> problems(Path schema, SpecificationVersion version, String json) {
    return READ
        .computeIfAbsent(schema, path -> read(path, version))
        .validate(
            json,
            InputFormat.JSON,
            context -> context.executionConfig(config -> config.formatAssertionsEnabled(true)))
        .stream()
        .map(Error::toString)
        .toList();
  }

  private static Schema read(Path schema, SpecificationVersion version) {
    try {
      return SchemaRegistry.withDefaultDialect(version)
          .getSchema(Files.readString(schema), InputFormat.JSON);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
