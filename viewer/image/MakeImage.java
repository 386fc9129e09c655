import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Makes a program that needs no Java: a runtime of the modules that the class path needs, two
 * starters (the command line and the window), notices, manual page, completions, icon. On Debian
 * also a package and an archive; on Windows and macOS their installers.
 *
 * <p>Arguments: folder of the project, folder of all jars, folder to make it in, version, jar of
 * the program.
 */
final class MakeImage {
  private static final String MAIN = "hemline.viewer.app.Main";
  private static final String WINDOW = "hemline.viewer.app.WindowMain";
  private static final String OPTIONS =
      "-XX:+UseSerialGC -Xshare:auto -Xlog:disable -Djava.awt.headless=true"
          + " -Dhemline.profiles=$APPDIR/profiles";

  /** As the launcher of a checkout starts {@code view}: what is seen comes before solves. */
  private static final String WINDOW_OPTIONS =
      " -XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000"
          + " -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000"
          + " -Xms128m -Xmx2g -XX:MinHeapFreeRatio=20 -XX:MaxHeapFreeRatio=40"
          + " -XX:ThreadPriorityPolicy=1 -XX:-PrintWarnings -XX:CompilerThreadPriority=5"
          + " -XX:JavaPriority1_To_OSPriority=10 -XX:JavaPriority2_To_OSPriority=3"
          + " -XX:JavaPriority9_To_OSPriority=0 -XX:JavaPriority10_To_OSPriority=0";

  private static final String INSTALLED = "/opt/hemline";
  private static final String[] SYSTEM_LIBRARIES = {
    "libc6",
    "libfreetype6",
    "libfontconfig1",
    "fonts-dejavu-core",
    "libharfbuzz0b",
    "liblcms2-2",
    "libjpeg62-turbo",
    "libpng16-16",
    "libgif7",
    "zlib1g",
    "libpangoft2-1.0-0"
  };

  private final Path root;
  private final Path jars;
  private final Path to;
  private final String version;
  private final Path program;

  private MakeImage(String[] args) {
    root = Path.of(args[0]).toAbsolutePath().normalize();
    jars = Path.of(args[1]).toAbsolutePath();
    to = Path.of(args[2]).toAbsolutePath();
    version = args[3].replace("-SNAPSHOT", "");
    program = Path.of(args[4]).toAbsolutePath();
  }

  public static void main(String[] args) throws Exception {
    new MakeImage(args).make();
  }

  private void make() throws Exception {
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    delete(to);
    Files.createDirectories(to);
    Files.copy(program, jars.resolve(program.getFileName()), StandardCopyOption.REPLACE_EXISTING);
    handbook();
    copy(root.resolve("profiles"), jars.resolve("profiles"));
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    run(java, root.resolve("viewer/image/MakeIcon.java").toString(), to.toString());
    runtime();
    if (system.contains("win")) {
      tool("jpackage", arguments("msi", "--win-menu", "--win-shortcut", "--win-per-user-install"));
    } else if (system.contains("mac")) {
      tool("jpackage", arguments("dmg"));
    } else {
      loadedClasses();
      tool("jpackage", arguments("app-image"));
      Path image = to.resolve("hemline");
      copy(to.resolve("handbook"), image.resolve("share"));
      archive(image);
      debian(image);
    }
  }

  /** The man page and completions of the program's own words, and the notices. */
  private void handbook() throws Exception {
    Path handbook = to.resolve("handbook");
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    run(java, "-cp", classPath(), "hemline.viewer.cli.Handbook", handbook.toString());
    Path licences = handbook.resolve("licences");
    copy(root.resolve("viewer/image/licences"), licences);
    Files.copy(root.resolve("LICENSE"), licences.resolve("Apache-2.0.txt"));
    for (Path jar : files(jars, ".jar")) {
      try (JarFile file = new JarFile(jar.toFile())) {
        for (var entry : (Iterable<JarEntry>) file.stream()::iterator) {
          String name = entry.getName();
          boolean notice = name.matches("(?i)META-INF/(.*/)?(LICEN[SC]E|NOTICE)[^/]*");
          if (notice && !entry.isDirectory()) {
            String folder = jar.getFileName().toString().replaceAll("\\.jar$", "");
            Path target = licences.resolve(folder).resolve(Path.of(name).getFileName());
            Files.createDirectories(target.getParent());
            Files.write(target, file.getInputStream(entry).readAllBytes());
          }
        }
      }
    }
    // inside the image too, where installers of other systems take it from
    copy(handbook.resolve("licences"), jars.resolve("licences"));
    Files.copy(
        handbook.resolve("NOTICE"), jars.resolve("NOTICE"), StandardCopyOption.REPLACE_EXISTING);
  }

  /** A runtime of the modules that the jars use, with an archive of loaded classes. */
  private void runtime() throws Exception {
    // some jars name modules that others of the class path do not have: only classes count
    Path classes = to.resolve("classes.jar");
    Set<String> seen = new HashSet<>();
    try (ZipOutputStream all = new ZipOutputStream(Files.newOutputStream(classes))) {
      all.setLevel(0);
      for (Path jar : files(jars, ".jar")) {
        addClasses(jar, all, seen);
      }
    }
    List<String> question =
        List.of("--print-module-deps", "--ignore-missing-deps", classes.toString());
    String modules = tool("jdeps", question).strip().lines().reduce((a, b) -> b).orElseThrow();
    System.out.println("modules: " + modules);
    Files.delete(classes);
    tool(
        "jlink",
        List.of(
            "--add-modules",
            modules,
            "--strip-debug",
            "--no-header-files",
            "--no-man-pages",
            "--compress=2",
            "--output",
            to.resolve("runtime").toString()));
    run(to.resolve("runtime/bin/java").toString(), "-Xshare:dump");
    for (Path file : files(to.resolve("runtime/bin"), "")) {
      // installed packages archive loaded classes with it
      if (Files.isRegularFile(file) && !file.endsWith("java")) {
        Files.delete(file);
      }
    }
  }

  /** Lists the classes that a solve, the command line and the window load. */
  private void loadedClasses() throws Exception {
    Path list = jars.resolve("classes.list");
    run(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:DumpLoadedClassList=" + list,
        "-XX:TieredStopAtLevel=1",
        "-Djava.awt.headless=true",
        "-cp",
        classPath(),
        MAIN,
        "run",
        jars.resolve("profiles/plain-flat-8.json").toString(),
        "--gap",
        "0.3mm",
        "--suction",
        "20Pa",
        "--mesh",
        "coarse",
        "--out",
        to.resolve("rehearsal").toString());
    delete(to.resolve("rehearsal"));
    Set<String> classes = new LinkedHashSet<>(Files.readAllLines(list));
    for (Path jar : files(jars, ".jar")) {
      if (jar.getFileName().toString().matches("(hemline|javafx)-.*")) {
        try (JarFile file = new JarFile(jar.toFile())) {
          file.stream()
              .map(JarEntry::getName)
              .filter(name -> name.endsWith(".class") && !name.endsWith("-info.class"))
              .filter(name -> !name.startsWith("META-INF"))
              .forEach(name -> classes.add(name.substring(0, name.length() - 6)));
        }
      }
    }
    Files.write(list, classes);
  }

  private static void addClasses(Path jar, ZipOutputStream all, Set<String> seen)
      throws IOException {
    try (JarFile file = new JarFile(jar.toFile())) {
      for (JarEntry entry : (Iterable<JarEntry>) file.stream()::iterator) {
        String name = entry.getName();
        boolean counts = name.endsWith(".class") && !name.contains("-info");
        if (counts && !name.startsWith("META-INF") && seen.add(name)) {
          all.putNextEntry(new ZipEntry(name));
          all.write(file.getInputStream(entry).readAllBytes());
        }
      }
    }
  }

  private String classPath() throws IOException {
    return String.join(
        System.getProperty("path.separator"),
        files(jars, ".jar").stream().map(Path::toString).toList());
  }

  private List<String> arguments(String type, String... more) throws IOException {
    Path line = to.resolve("line.properties");
    boolean image = type.equals("app-image");
    // where names differ in letters' case only, two starters would be one
    String first = image ? "hemline" : "Hemline";
    Files.writeString(
        line,
        "main-jar="
            + mainJar()
            + "\nmain-class="
            + (image ? WINDOW : MAIN)
            + "\njava-options="
            + OPTIONS
            + (image ? WINDOW_OPTIONS : "")
            + "\nwin-console=true\n");
    List<String> all =
        new ArrayList<>(
            List.of(
                "--type",
                type,
                "--name",
                first,
                "--app-version",
                version,
                "--vendor",
                "Hemline",
                "--description",
                "Bench for the seal lips of suction-held machines",
                "--input",
                jars.toString(),
                "--main-jar",
                mainJar(),
                "--main-class",
                image ? MAIN : WINDOW,
                "--runtime-image",
                to.resolve("runtime").toString(),
                "--dest",
                to.toString(),
                "--add-launcher",
                (image ? "hemline-window=" : "hemline-line=") + line));
    for (String option : (OPTIONS + (image ? "" : WINDOW_OPTIONS)).split(" ")) {
      all.addAll(List.of("--java-options", option));
    }
    if (!image) {
      Path lips = to.resolve("lips.properties");
      Files.writeString(
          lips,
          "extension=hemline\nmime-type=application/x-hemline-lip\ndescription=Hemline lip\n");
      all.addAll(List.of("--file-associations", lips.toString()));
      all.addAll(List.of("--license-file", root.resolve("LICENSE").toString()));
      all.addAll(
          List.of(
              "--icon", to.resolve("icon." + (type.equals("msi") ? "ico" : "icns")).toString()));
    }
    all.addAll(List.of(more));
    return all;
  }

  private String mainJar() throws IOException {
    return files(jars, ".jar").stream()
        .map(jar -> jar.getFileName().toString())
        .filter(name -> name.startsWith("hemline-viewer"))
        .findFirst()
        .orElseThrow();
  }

  private void archive(Path image) throws Exception {
    run(
        "tar",
        "-C",
        to.toString(),
        "--sort=name",
        "--owner=0",
        "--group=0",
        "-czf",
        to.resolve("hemline-" + version + "-linux.tar.gz").toString(),
        "hemline");
  }

  /** A package all of whose files the system knows, so that it takes all of them away again. */
  private void debian(Path image) throws Exception {
    Path stage = to.resolve("debian");
    copy(image, stage.resolve(INSTALLED.substring(1)));
    delete(stage.resolve(INSTALLED.substring(1)).resolve("share"));
    Path share = stage.resolve("usr/share");
    link(stage.resolve("usr/bin/hemline"), INSTALLED + "/bin/hemline");
    Path handbook = to.resolve("handbook");
    put(
        share.resolve("bash-completion/completions/hemline"),
        Files.readAllBytes(handbook.resolve("hemline.bash")));
    put(share.resolve("zsh/vendor-completions/_hemline"), text("_hemline"));
    put(share.resolve("man/man1/hemline.1.gz"), packed(handbook.resolve("hemline.1")));
    copy(handbook.resolve("licences"), share.resolve("doc/hemline/licences"));
    put(share.resolve("doc/hemline/copyright"), Files.readAllBytes(handbook.resolve("NOTICE")));
    put(
        share.resolve("icons/hicolor/256x256/apps/hemline.png"),
        Files.readAllBytes(to.resolve("icon.png")));
    put(share.resolve("applications/hemline.desktop"), text("hemline.desktop"));
    put(share.resolve("mime/packages/hemline.xml"), text("hemline.xml"));
    String architecture = run("dpkg", "--print-architecture").strip();
    long size = 0;
    for (Path file : files(stage, "")) {
      size += Files.isRegularFile(file) ? Files.size(file) : 0;
    }
    put(
        stage.resolve("DEBIAN/control"),
        text("control", version, architecture, size / 1024, String.join(", ", SYSTEM_LIBRARIES)));
    String app = INSTALLED + "/lib/app/";
    String path =
        Files.readAllLines(image.resolve("lib/app/hemline.cfg")).stream()
            .filter(line -> line.startsWith("app.classpath="))
            .map(line -> line.replace("app.classpath=$APPDIR/", app))
            .collect(Collectors.joining(":"));
    for (Path starter : files(stage.resolve(app.substring(1)), ".cfg")) {
      String line = "java-options=-XX:SharedArchiveFile=$APPDIR/hemline.jsa\n";
      Files.writeString(starter, line, StandardOpenOption.APPEND);
    }
    script(stage.resolve("DEBIAN/postinst"), text("postinst", path));
    script(stage.resolve("DEBIAN/prerm"), text("prerm"));
    run(
        "dpkg-deb",
        "--root-owner-group",
        "-Zgzip",
        "--build",
        stage.toString(),
        to.resolve("hemline_" + version + "_" + architecture + ".deb").toString());
  }

  /** A file of the package, with values in its places. */
  private byte[] text(String name, Object... values) throws IOException {
    String text = Files.readString(root.resolve("viewer/image/debian").resolve(name));
    return (values.length == 0 ? text : text.formatted(values)).getBytes(UTF_8);
  }

  private static byte[] packed(Path file) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream zip = new GZIPOutputStream(out)) {
      Files.copy(file, zip);
    }
    return out.toByteArray();
  }

  private static void put(Path file, byte[] content) throws IOException {
    Files.createDirectories(file.getParent());
    Files.write(file, content);
  }

  private static void script(Path file, byte[] text) throws IOException {
    put(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private static void link(Path link, String target) throws IOException {
    Files.createDirectories(link.getParent());
    Files.createSymbolicLink(link, Path.of(target));
  }

  private static List<Path> files(Path folder, String ending) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(f -> f.toString().endsWith(ending)).sorted().toList();
    }
  }

  private static void copy(Path from, Path target) throws IOException {
    for (Path file : files(from, "")) {
      Path copy = target.resolve(from.relativize(file).toString());
      if (Files.isDirectory(file)) {
        Files.createDirectories(copy);
      } else {
        Files.copy(
            file, copy, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
  }

  private static void delete(Path place) throws IOException {
    if (Files.exists(place)) {
      List<Path> all = new ArrayList<>(files(place, ""));
      java.util.Collections.reverse(all);
      for (Path one : all) {
        Files.delete(one);
      }
    }
  }

  private static String tool(String name, List<String> arguments) {
    StringWriter out = new StringWriter();
    PrintWriter writer = new PrintWriter(out);
    int code =
        ToolProvider.findFirst(name)
            .orElseThrow(() -> new IllegalStateException("this JDK has no " + name))
            .run(writer, writer, arguments.toArray(String[]::new));
    if (code != 0) {
      throw new IllegalStateException(name + " failed: " + out);
    }
    return out.toString();
  }

  private static String run(String... words) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    if (process.waitFor() != 0) {
      throw new IllegalStateException(String.join(" ", words) + " failed: " + said);
    }
    return said;
  }
}
