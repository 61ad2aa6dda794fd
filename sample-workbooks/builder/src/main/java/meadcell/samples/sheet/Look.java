package meadcell.samples.sheet;

import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;

/**
 * The few looks a cell can have. Inputs are straw with a frame, results lake grey without; logs are
 * plain.
 */
enum Look {
  TITLE(18, true, "46394F", null, null, null),
  LEAD(10, false, "5A5560", null, null, null),
  HEADING(12, true, "46394F", null, null, null),
  LABEL(10, false, "222222", null, null, null),
  STORY(11, false, "222222", null, null, null),
  NOTE(9, false, "5A5560", null, null, null),
  WARNING(10, false, "7A2E22", "F7E9E4", null, null),
  ALARM(10, true, "7A2E22", null, null, null),
  HEADER(10, true, "FFFFFF", "46394F", null, HorizontalAlignment.CENTER),
  UNIT(9, false, "46394F", "E6E1E9", null, HorizontalAlignment.CENTER),
  INPUT(10, false, "222222", "FBF3DC", "8C7A3B", null),
  TYPED(10, false, "222222", null, null, null),
  RESULT(10, false, "16373D", "E3ECEE", null, null),
  VERDICT(10, true, "16373D", "E3ECEE", null, HorizontalAlignment.LEFT);

  final int points;
  final boolean bold;
  final String ink;
  final String fill;
  final String frame;
  final HorizontalAlignment align;

  Look(int points, boolean bold, String ink, String fill, String frame, HorizontalAlignment align) {
    this.points = points;
    this.bold = bold;
    this.ink = ink;
    this.fill = fill;
    this.frame = frame;
    this.align = align;
  }

  VerticalAlignment vertical() {
    return this == HEADER || this == VERDICT || this == WARNING
        ? VerticalAlignment.CENTER
        : VerticalAlignment.TOP;
  }
}
