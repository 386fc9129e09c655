package hemline.viewer.cli;

import hemline.shared.file.DxfFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.file.LoadedLip;
import hemline.shared.file.StlFile;
import hemline.shared.file.SvgFile;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Ring;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.MountEdge;
import hemline.shared.units.NumberText;
import hemline.viewer.page.Page;
import hemline.viewer.page.PageText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Brings a drawing in as a lip, and takes a lip out as a drawing or a test coupon. */
@Command(
    name = "convert",
    description = {
      "Make a lip file of a drawing, or a drawing or a test coupon of a lip.",
      "The endings of IN and OUT tell what they are; an OUT that is there already is replaced."
    },
    customSynopsis = "hemline convert IN OUT [options]",
    sortOptions = false,
    mixinStandardHelpOptions = true)
final class ConvertCommand extends Job {
  private static final String USUAL_LENGTH = "40mm";

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "IN",
      description = "Lip file (.json) or drawing (.svg, .dxf).")
  @Nullable Path in;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "OUT",
      description = "Lip file (.json), drawing (.svg, .dxf) or test coupon to print (.stl).")
  @Nullable Path out;

  @Option(
      names = "--length",
      paramLabel = "Q",
      description = "Length of a test coupon (default: " + USUAL_LENGTH + ").")
  @Nullable String length;

  @Option(
      names = "--name",
      paramLabel = "NAME",
      description = "Name of the lip in a lip file or SVG drawing (default: that of IN).")
  @Nullable String name;

  ConvertCommand(Desk desk) {
    super(desk);
  }

  @Override
  int work() throws InputException {
    Wanted wanted = new Wanted();
    LoadedLip read = readLip(wanted);
    String kind = outKind(wanted);
    double couponLength = 0;
    if (length != null && !kind.isEmpty() && !kind.equals("stl")) {
      wanted.fault("--length", "only a test coupon has a length; leave it out, or end OUT in .stl");
    } else {
      couponLength = wanted.couponLength("--length", length == null ? USUAL_LENGTH : length);
    }
    if (name != null && (kind.equals("dxf") || kind.equals("stl"))) {
      wanted.fault("--name", "a ." + kind + " file holds no name; leave it out");
    }
    boolean named = kind.equals("json") || kind.equals("svg");
    if (name != null && name.isBlank()) {
      wanted.fault("--name", "the name is empty; give a short one such as \"plain flat 8\"");
    } else if (named && name == null && read != null && read.profile().name().isBlank()) {
      wanted.fault(String.valueOf(in), "gives the lip no name; add --name \"my lip\"");
    }
    wanted.check();
    if (read == null || out == null) {
      throw new IllegalStateException("a lip that cannot be read is a problem");
    }
    if (desk.cancel().isCancelled()) {
      tell("stopped on request; nothing was written.");
      return ExitCode.CANCELLED;
    }
    String lipName = name == null ? read.profile().name() : name;
    write(out, kind, read, lipName, couponLength);
    Page page = new Page(summary(out, kind, read.profile(), lipName, couponLength));
    print(PageText.lines(page.notices(notices(read, kind))));
    return ExitCode.DONE;
  }

  private @Nullable LoadedLip readLip(Wanted wanted) {
    if (in == null) {
      wanted.fault("IN", "a lip file or drawing is needed, such as profiles/plain-flat-8.json");
      return null;
    }
    if (!List.of("json", "svg", "dxf").contains(ending(in))) {
      wanted.fault(in.toString(), "a lip to convert must end in .json, .svg or .dxf");
      return null;
    }
    return Lips.one(in, wanted);
  }

  /** Kind of the file to write; empty after a problem. */
  private String outKind(Wanted wanted) {
    if (out == null) {
      if (in != null) {
        wanted.fault("OUT", "a file to write is needed, such as lip.dxf or coupon.stl");
      }
      return "";
    }
    String kind = ending(out);
    if (!List.of("json", "svg", "dxf", "stl").contains(kind)) {
      wanted.fault(out.toString(), "a file to write must end in .json, .svg, .dxf or .stl");
      return "";
    }
    if (Files.isDirectory(out)) {
      wanted.fault(out.toString(), "is a folder; name a file to write");
    } else if (in != null && isSame(in, out)) {
      wanted.fault(out.toString(), "is the file that is read; write to another one");
    }
    return kind;
  }

  private static boolean isSame(Path in, Path out) {
    try {
      return Files.exists(in) && Files.exists(out) && Files.isSameFile(in, out);
    } catch (IOException e) {
      return in.toAbsolutePath().normalize().equals(out.toAbsolutePath().normalize());
    }
  }

  private static String ending(Path file) {
    String text = file.toString();
    return text.substring(text.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private void write(Path file, String kind, LoadedLip lip, String lipName, double couponLength)
      throws InputException {
    switch (kind) {
      case "json" -> LipFile.write(file, drawing(lip, lipName));
      case "svg" -> SvgFile.write(file, lip.profile().bodies(), lipName);
      case "dxf" -> DxfFile.write(file, lip.profile().bodies());
      default -> StlFile.write(file, lip.profile(), couponLength);
    }
  }

  /**
   * The lip as it goes into a lip file; one from a lip file keeps its coordinates and roundings.
   */
  private LipDrawing drawing(LoadedLip lip, String lipName) {
    boolean imported = in != null && LipImport.isDrawing(in);
    return (imported ? LipImport.atOrigin(lip) : lip.drawing()).named(lipName);
  }

  private static List<Notice> notices(LoadedLip lip, String kind) {
    List<Notice> notices = new ArrayList<>(lip.notices());
    LipProfile p = lip.profile();
    boolean drawn = kind.equals("svg") || kind.equals("dxf");
    if (drawn && MountEdge.findAtTop(p.outline().vertices()).orElse(-1) != p.mountEdge()) {
      notices.add(NoticeKind.DRAWING_MOUNT_EDGE.of());
    }
    return notices;
  }

  /** What was written, with its size, so that a wrong length unit shows at once. */
  private static String summary(
      Path file, String kind, LipProfile profile, String lipName, double couponLength) {
    boolean coupon = kind.equals("stl");
    // a profile stands in the corner of its frame
    double width = 0;
    double height = 0;
    for (Outline body : profile.bodies()) {
      Ring ring = body.flatten();
      width = Math.max(width, Arrays.stream(ring.x()).max().orElseThrow());
      height = Math.max(height, Arrays.stream(ring.y()).max().orElseThrow());
    }
    return (coupon ? "A test coupon of \"" : "The lip \"")
        + lipName
        + "\", "
        + NumberText.millimetres(width)
        + (coupon ? " wide, " : " wide and ")
        + NumberText.millimetres(height)
        + " high"
        + (coupon ? " and " + NumberText.millimetres(couponLength) + " long" : "")
        + ", is in "
        + file
        + ".";
  }
}
