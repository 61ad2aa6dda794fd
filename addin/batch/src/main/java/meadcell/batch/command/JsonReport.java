package meadcell.batch.command;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import meadcell.batch.book.Value;
import meadcell.batch.report.Report;
import meadcell.cellar.Cellar;

/** All details of a run as JSON. */
final class JsonReport {
  /** The word by which {@code explain} knows the page. */
  static final String NAME = "report";

  static final String OPTION = "Write all details as JSON; \"explain " + NAME + "\" describes it.";

  private static final String FORM =
      """
      The file that --report writes is one JSON object:

        schema        1; a member or code never changes its meaning within a schema
        command       fill, recalc, freeze or check
        version       of the tool
        files         a list, in the order of the command line

      of each file:

        file          the workbook
        target        where the result goes
        status        how it ended; see below
        sentence      why, if it failed
        milliseconds  spent on it
        unchanged     how many results were computed and are as they were
        changes       a list of cells that hold something new
        remarks       a list of what to look at

      of each change:

        sheet, cell   where
        result        the plan's name of it
        found         how the cell was found
        formula       what it holds now
        before        its value before, or null
        after         its value now, or null; a number, text, true, false, or an error as text

      of each remark:

        code          its kind; see below
        sheet, cell   where; both empty if the whole file is meant
        text          what the cell or function in question is
        sentence      for people

      """;

  private JsonReport() {}

  /** The page that describes the file. */
  static String page() {
    StringBuilder page = new StringBuilder(FORM);
    page.append("Statuses:\n\n");
    for (FileResult.Status status : FileResult.Status.values()) {
      page.append(String.format("  %-16s  %s%n", status, status.meaning));
    }
    page.append("\nCodes:\n\n");
    for (Report.Code code : Report.Code.values()) {
      page.append(String.format("  %-16s  %s%n", code, code.meaning()));
    }
    return page.toString();
  }

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
    } catch (IOException e) {
      throw new IOException("The report was not written. " + FileTrouble.sentence(e), e);
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

  private static void value(JsonWriter json, Value value) throws IOException {
    if (value instanceof Value.Number plain) {
      json.value(plain.number());
    } else if (value instanceof Value.Truth truth) {
      json.value(truth.isTrue());
    } else {
      json.value(value.isBlank() ? null : value.toString());
    }
  }
}
