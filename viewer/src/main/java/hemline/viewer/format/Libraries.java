package hemline.viewer.format;

import java.util.List;

/** Libraries that the program is shipped with, and their licences. */
public final class Libraries {
  /**
   * A library.
   *
   * @param jar beginning of the names of its files
   * @param name for people
   * @param version used
   * @param licence its licence
   * @param use what it does here
   */
  public record Library(String jar, String name, String version, String licence, String use) {}

  private static final String APACHE = "Apache-2.0";

  private static final List<Library> ALL =
      List.of(
          new Library(
              "javafx-", "OpenJFX", "21.0.11", "GPL-2.0 with Classpath exception", "window"),
          new Library("ejml-", "EJML", "0.46.1", APACHE, "linear algebra"),
          new Library("commons-math3", "Apache Commons Math", "3.6.1", APACHE, "fits, statistics"),
          new Library("commons-csv", "Apache Commons CSV", "1.14.1", APACHE, "tables"),
          new Library(
              "commons-codec", "Apache Commons Codec", "1.19.0", APACHE, "with Commons CSV"),
          new Library("jackson-", "Jackson", "2.23", APACHE, "JSON"),
          new Library("picocli", "picocli", "4.7.7", APACHE, "command line"),
          new Library("arrow-format", "Apache Arrow format", "18.3.0", APACHE, "tables of batches"),
          new Library("flatbuffers-java", "FlatBuffers", "25.2.10", APACHE, "with Arrow"),
          new Library("jts-core", "JTS Topology Suite", "1.20.0", "EPL-2.0 or EDL-1.0", "outlines"),
          new Library("batik-", "Apache Batik parser", "1.19", APACHE, "SVG paths"),
          new Library(
              "xmlgraphics-commons", "Apache XML Graphics Commons", "2.11", APACHE, "with Batik"),
          new Library("xml-apis-ext", "XML Commons External", "1.3.04", APACHE, "with Batik"),
          new Library("commons-io", "Apache Commons IO", "2.20.0", APACHE, "with Commons CSV"),
          new Library("commons-logging", "Apache Commons Logging", "1.3.0", APACHE, "with Batik"),
          new Library("indriya", "Indriya", "2.2.3", "BSD-3-Clause", "quantities with units"),
          new Library(
              "unit-api", "Units of Measurement API", "2.2", "BSD-3-Clause", "with Indriya"),
          new Library("uom-lib", "UOM Lib", "2.2", "BSD-3-Clause", "with Indriya"),
          new Library("jakarta.inject-api", "Jakarta Inject", "2.0.1", APACHE, "with Indriya"),
          new Library("jspecify", "JSpecify", "1.0.0", APACHE, "notes on null in the code"));

  private Libraries() {}

  public static List<Library> all() {
    return ALL;
  }
}
