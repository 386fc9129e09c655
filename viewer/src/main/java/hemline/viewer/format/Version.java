package hemline.viewer.format;

/** Version of the program. */
public final class Version {
  public static final String TEXT = "0.1.0";

  private Version() {}
}
