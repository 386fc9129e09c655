package hemline.viewer.cli;

import hemline.viewer.format.Version;
import picocli.CommandLine.Command;

/** The program; its work is in the commands below it. */
@Command(
    name = "hemline",
    description = {
      "Bench for the seal lips of suction-held machines: how much air leaks under a lip, and which"
          + " lip leaks least.",
      ""
    },
    footer = {
      "",
      "Quantities carry units: 2mm, 0.6kPa, 15m/s. Ranges have two dots: 1mm..6mm.",
      "Exit codes: 0 done, 1 ran but a result is not usable, 2 bad input, 130 cancelled.",
      "'hemline COMMAND --help' explains a command."
    },
    synopsisSubcommandLabel = "COMMAND",
    commandListHeading = "%nCommands%n",
    optionListHeading = "%nOptions%n",
    mixinStandardHelpOptions = true,
    version = "hemline " + Version.TEXT)
final class HemlineCommand {}
