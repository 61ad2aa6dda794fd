package meadcell.batch.draft;

import java.util.List;

/** What a plan is, for {@code explain plan} and for the plans themselves. */
public final class PlanPage {
  private PlanPage() {}

  /** The page, a paragraph each. */
  public static List<String> lines() {
    return List.of(
        "A plan says what to fill into logs: a workbook with a sheet Fill, a line for each result. \"meadcell draft\" writes one from logs, \"meadcell draft --empty\" one without; read it, change what is not right, delete lines that you do not want, and give it to \"meadcell fill\".",
        "Sheet: the name of the sheets the line is for, or a pattern: * is any text, ? any letter.",
        "Result: the header of the column, or the label of the cell, to fill. One that is not there yet is added beside the table or the labels. A unit in it counts: Headspace (gal) is given in gallons.",
        "Formula: a cellar function, or arithmetic around it. [SG] is this row's value under the header SG, [all SG] the whole column, [so far SG] its part down to this row, from the last blank on, {OG} the value beside, below or behind the label OG. [SG #2] is the second of two columns of that name.",
        "Format: a number format such as 0.0000, as a text; left blank, the usual one of the function.",
        "Workbook: only where one plan is for several logs: the file's name or a pattern; left blank, all.",
        "Note, Mark, and every other column are for people. Mark is \"sure\" where name, unit and values of every input agree; \"please check\" where the column beside it says what to look at.",
        "The sheet Names says which other words stand for a header: the header, then its spellings in the logs. With a unit, as in Temp (°F), a spelling without one is in that unit.",
        "A header that the plan does not find as it is written is looked for in the trade's other words for it, in English and German. Units stand in the header, in the row below it, beside a labelled value, or in the cell itself; one that is not known is refused.",
        "Tables may lie across, follow each other without a gap, or repeat their header. What a person typed is never overwritten.");
  }
}
