package hemline.viewer.hard;

import hemline.shared.file.LipImport;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads one drawing as a program of its own does and tells what it took. */
final class TimedRead {
  private TimedRead() {}

  /**
   * Reads.
   *
   * @param args the drawing; printed are the processor time, s, and "read" or what was told
   */
  public static void main(String[] args) {
    String end = "read";
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    try {
      LipImport.load(Path.of(args[0]));
    } catch (InputException e) {
      end = e.problems().get(0).toString();
    }
    long time = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before;
    System.out.println(1e-9 * time + " " + peak() + " " + end);
  }

  /** Most memory that the process had, bytes; 0 where the system does not tell. */
  private static long peak() {
    try {
      return Files.readAllLines(Path.of("/proc/self/status")).stream()
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> 1024 * Long.parseLong(line.replaceAll("[^0-9]", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException e) {
      return 0;
    }
  }
}
