package hemline.viewer.hard;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Programs of this build that are started to be killed. */
final class Victim {
  private Victim() {}

  /** Kills in all, {@code -Dhemline.hard.kills}: half of edits, a fifth of windows, ... */
  static int kills() {
    return Integer.getInteger("hemline.hard.kills", 200);
  }

  /**
   * Starts Java.
   *
   * @param options of Java
   * @param program main class and its arguments
   * @param words gets what it prints
   */
  static Process java(List<String> options, List<String> program, Path words) throws IOException {
    return java(List.of(), options, program, words);
  }

  /**
   * Starts Java by another program.
   *
   * @param by program that starts what follows it, with its arguments
   */
  static Process java(List<String> by, List<String> options, List<String> program, Path words)
      throws IOException {
    return builder(by, options, program, words)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  /** Starts Java by another program and keeps its errors too. */
  static Process java(
      List<String> by, List<String> options, List<String> program, Path words, Path errors)
      throws IOException {
    return builder(by, options, program, words).redirectError(errors.toFile()).start();
  }

  private static ProcessBuilder builder(
      List<String> by, List<String> options, List<String> program, Path words) throws IOException {
    List<String> command = new ArrayList<>(by);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xshare:auto"));
    command.add("-Djava.awt.headless=true");
    command.addAll(options);
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(program);
    Files.writeString(words, "");
    return new ProcessBuilder(command).redirectOutput(words.toFile());
  }

  /** Whole lines that a program printed. */
  static List<String> told(Path words) throws IOException {
    String all = Files.readString(words);
    return all.substring(0, all.lastIndexOf('\n') + 1).lines().toList();
  }
}
