package meadcell.batch.book;

/** A setting of a workbook that makes formulas give something else than in most workbooks. */
public enum Setting {
  /** Day 0 is another than 30 December 1899. */
  OTHER_DAYS("the workbook counts its days from another date than most"),

  /** Every number is rounded to what its cell shows. */
  AS_SHOWN("the workbook calculates with numbers as they are shown"),

  /** Texts that differ in capital letters only are not equal. */
  CAPITALS("the workbook tells capital letters from small ones"),

  /** What is looked for is a regular expression, has no wildcards, or may be a part of a cell. */
  PATTERNS("the workbook takes the texts that are looked for in another way than most");

  private final String sentence;

  Setting(String sentence) {
    this.sentence = sentence;
  }

  /** What the workbook does; goes on in a sentence. */
  public String sentence() {
    return sentence;
  }
}
