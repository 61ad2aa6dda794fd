package meadcell.release;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;

/**
 * The package for Debian and Ubuntu: what jpackage makes of the tool's folder, with what a shell, a
 * reader of manuals and a desktop look for added in their places.
 */
final class DebianPackage {
  /** Of every file in the package, so that equal contents are equal packages. */
  private static final String TIME = "1793491200"; // 2026-11-01, as project.build.outputTimestamp

  private final Path project;
  private final Path pages;
  private final Path work;

  DebianPackage(Path project, Path pages, Path work) {
    this.project = project;
    this.pages = pages;
    this.work = work;
  }

  void make(Path tool, String version, Path release) throws IOException, InterruptedException {
    Path plain = work.resolve("deb");
    List<String> jpackage =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "jpackage").toString(),
            "--type",
            "deb",
            "--name",
            "meadcell",
            "--app-version",
            version,
            "--app-image",
            tool.toString(),
            "--description",
            Release.SUMMARY,
            "--license-file",
            project.resolve("LICENSE").toString(),
            "--linux-app-category",
            "science",
            "--linux-app-release", // newer jpackages leave it out of the name
            "1",
            "--dest",
            plain.toString());
    Program.run(jpackage, Map.of("DPKG_DEB_COMPRESSOR_TYPE", "none"));
    Path made = Folders.files(plain).get(0);
    Path tree = work.resolve("tree");
    Program.run(List.of("dpkg-deb", "--raw-extract", made.toString(), tree.toString()));
    addPages(tree.resolve("usr"));
    Program.run(
        List.of(
            "dpkg-deb",
            "--root-owner-group",
            "--build",
            tree.toString(),
            release.resolve(made.getFileName()).toString()),
        Map.of("SOURCE_DATE_EPOCH", TIME));
  }

  private void addPages(Path usr) throws IOException {
    Path linux = project.resolve("addin/release/src/main/linux");
    Path bin = Files.createDirectories(usr.resolve("bin"));
    Files.createSymbolicLink(bin.resolve("meadcell"), Path.of("/opt/meadcell/bin/meadcell"));
    copy(linux.resolve("meadcell.desktop"), usr.resolve("share/applications"));
    Path icons = Files.createDirectories(usr.resolve("share/icons/hicolor/256x256/apps"));
    Mark.write(icons.resolve("meadcell.png"));
    Path bash = usr.resolve("share/bash-completion/completions");
    copy(pages.resolve("completion/meadcell.bash"), bash);
    Files.move(bash.resolve("meadcell.bash"), bash.resolve("meadcell"));
    copy(pages.resolve("completion/_meadcell"), usr.resolve("share/zsh/vendor-completions"));
    for (Path page : Folders.files(pages.resolve("man1"))) {
      Path man = Files.createDirectories(usr.resolve("share/man/man1"));
      try (OutputStream out =
          new GZIPOutputStream(Files.newOutputStream(man.resolve(page.getFileName() + ".gz")))) {
        Files.copy(page, out);
      }
    }
  }

  private static void copy(Path file, Path folder) throws IOException {
    Files.copy(file, Files.createDirectories(folder).resolve(file.getFileName()));
  }
}
