package hemline.solver.spark;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SectionResult;
import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.spark.launcher.JavaModuleOptions;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A master and two workers on this machine, of which one is killed in the midst of a batch. */
class WorkersTest {
  private static final Path ENGINE = Path.of("target", "engine").toAbsolutePath();
  private static final int SECTIONS = 12;

  @TempDir Path dir;

  private final List<Process> started = new ArrayList<>();

  @AfterEach
  void stop() {
    started.forEach(WorkersTest::kill);
  }

  private static void kill(Process process) {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
  }

  @Test
  void aKilledWorkerLosesNothingAndRepeatsNothing() throws Exception {
    String master = "spark://127.0.0.1:" + freePort();
    String port = master.substring(master.lastIndexOf(':') + 1);
    String parts = "org.apache.spark.deploy.";
    start(
        "master",
        parts + "master.Master",
        "--host",
        "127.0.0.1",
        "--port",
        port,
        "--webui-port",
        "0");
    List<Process> workers = new ArrayList<>();
    for (String name : List.of("one", "two")) {
      workers.add(
          start(
              name,
              parts + "worker.Worker",
              "--cores",
              "1",
              "--memory",
              "1g",
              "--webui-port",
              "0",
              "--work-dir",
              dir.resolve("work-" + name).toString(),
              master));
    }
    Process driver = start("driver", Driver.class.getName(), master, String.valueOf(SECTIONS));
    while (driver.isAlive() && told("driver").size() < SECTIONS / 3) {
      Thread.sleep(50);
    }
    assertThat(told("driver")).as("answers at the kill").hasSizeBetween(1, SECTIONS - 2);
    kill(workers.get(0));
    assertThat(driver.waitFor()).as("%s", told("driver")).isZero();

    Map<Integer, SectionResult> results = new TreeMap<>();
    List<String> lines = told("driver");
    assertThat(lines).hasSize(SECTIONS + 1).endsWith("done");
    for (String line : lines.subList(0, SECTIONS)) {
      String[] words = line.split(" ", 2);
      SectionResult result = SectionText.read(words[1], SectionResult.class);
      assertThat(results.put(Integer.valueOf(words[0]), result)).as("twice: " + line).isNull();
    }
    assertThat(results).isEqualTo(Samples.solvedHere(Samples.sections(SECTIONS)));
  }

  private List<String> told(String name) throws IOException {
    String all = Files.readString(dir.resolve(name));
    return all.substring(0, all.lastIndexOf('\n') + 1).lines().toList();
  }

  private Process start(String name, String... program) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx512m");
    command.addAll(List.of(JavaModuleOptions.defaultModuleOptions().split(" ")));
    command.addAll(List.of("-cp", classPath(), "-Djava.io.tmpdir=" + dir));
    command.addAll(List.of(program));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().put("SPARK_HOME", ENGINE.toString());
    builder.environment().put("SPARK_LOCAL_IP", "127.0.0.1");
    builder.environment().put("SPARK_SCALA_VERSION", "2.13");
    builder.redirectOutput(dir.resolve(name).toFile());
    builder.redirectError(dir.resolve(name + ".err").toFile());
    Process process = builder.start();
    started.add(process);
    return process;
  }

  /** The engine's own folder first, then what goes to the workers with the batch. */
  private static String classPath() {
    List<String> parts = new ArrayList<>(List.of(ENGINE.resolve("jars") + "/*"));
    Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(part -> !Files.exists(ENGINE.resolve("jars").resolve(new File(part).getName())))
        .forEach(parts::add);
    return String.join(File.pathSeparator, parts);
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }
}
