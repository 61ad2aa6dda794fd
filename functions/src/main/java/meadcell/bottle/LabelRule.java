package meadcell.bottle;

/** Whose law a label follows. */
public enum LabelRule {
  USA,
  EU
}
