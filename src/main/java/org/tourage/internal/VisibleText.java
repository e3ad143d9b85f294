package org.tourage.internal;

/** Text of others made fit for a message: short, and without characters that steer a terminal. */
public final class VisibleText {
  /** Longer texts are cut; a message is read by people. */
  private static final int MAX_LENGTH = 200;

  private VisibleText() {}

  /**
   * Makes a text fit for a message.
   *
   * @param text the text
   * @return the text with control and invisible characters as {@code \\u001b}, cut after 200
   *     characters
   */
  public static String of(String text) {
    int end = Math.min(text.length(), MAX_LENGTH);
    StringBuilder out = new StringBuilder(end);
    for (int i = 0; i < end; i++) {
      char c = text.charAt(i);
      if (isHidden(c)) {
        out.append(String.format(java.util.Locale.ROOT, "\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    return out.append(end < text.length() ? "…" : "").toString();
  }

  /**
   * Whether a character is not seen, or moves what is: control characters but the tab, direction
   * marks, zero-width characters, line separators, the byte-order mark.
   *
   * @param c the character
   * @return true if it is
   */
  public static boolean isHidden(char c) {
    if (c >= ' ' && c < '\u007f' || c == '\t') {
      return false;
    }
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR;
  }
}
