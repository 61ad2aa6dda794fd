package meadcell.batch.command;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import meadcell.batch.report.Report;
import meadcell.cellar.Cellar;

/**
 * All details of a run as JSON, schema 1: {@code schema, command, version, files[]}; each file has
 * {@code file, target, status, sentence, milliseconds, unchanged, changes[], remarks[]}; a change
 * has {@code sheet, cell, result, found, formula, before, after}; a remark {@code code, sheet,
 * cell, text, sentence}. Codes and statuses never change their meaning within a schema.
 */
final class JsonReport {
  private JsonReport() {}

  static void write(Path path, String command, List<FileResult> results) throws IOException {
    try (JsonWriter json = new JsonWriter(Files.newBufferedWriter(path))) {
      json.setIndent(" ");
      json.beginObject();
      json.name("schema").value(1);
      json.name("command").value(command);
      json.name("version").value(Cellar.version());
      json.name("files").beginArray();
      for (FileResult result : results) {
        file(json, result);
      }
      json.endArray().endObject();
    }
  }

  private static void file(JsonWriter json, FileResult result) throws IOException {
    json.beginObject();
    json.name("file").value(result.file().toString());
    json.name("target").value(result.target().toString());
    json.name("status").value(result.status().name());
    json.name("sentence").value(result.sentence());
    json.name("milliseconds").value(result.nanoseconds() / 1_000_000);
    json.name("unchanged").value(result.isDone() ? result.report().unchangedCells() : 0);
    json.name("changes").beginArray();
    if (result.isDone()) {
      for (Report.Change change : result.report().changes()) {
        json.beginObject();
        json.name("sheet").value(change.sheet());
        json.name("cell").value(change.cell());
        json.name("result").value(change.result());
        json.name("found").value(change.found());
        json.name("formula").value(change.formula());
        value(json.name("before"), change.before());
        value(json.name("after"), change.after());
        json.endObject();
      }
    }
    json.endArray();
    json.name("remarks").beginArray();
    for (Report.Remark remark : result.remarks()) {
      json.beginObject();
      json.name("code").value(remark.code().name());
      json.name("sheet").value(remark.sheet());
      json.name("cell").value(remark.cell());
      json.name("text").value(remark.text());
      json.name("sentence").value(remark.sentence());
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  private static void value(JsonWriter json, Object value) throws IOException {
    if (value instanceof Double number) {
      json.value(number);
    } else if (value instanceof Boolean truth) {
      json.value(truth);
    } else {
      json.value(value == null ? null : value.toString());
    }
  }
}
