package meadcell.release;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.ByteBuffer;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;

/**
 * Brings the old class files of libraries to the format of Java 8. They do the same; but older ones
 * state no types for the verifier, and Java archives no class that it cannot verify beforehand.
 */
final class ModernClasses {
  private static final int VERSION_OFFSET = 6;

  private ModernClasses() {}

  /**
   * Changes the classes in a jar.
   *
   * @param known another jar, with all that they rest on
   */
  static void in(Path jar, Path known) throws IOException {
    URL[] url = {known.toUri().toURL()};
    try (URLClassLoader loader = new URLClassLoader(url, ClassLoader.getPlatformClassLoader());
        FileSystem zip = FileSystems.newFileSystem(jar);
        Stream<Path> files = Files.walk(zip.getPath("/"))) {
      List<Path> classes = files.filter(file -> file.toString().endsWith(".class")).toList();
      for (Path file : classes) {
        byte[] content = Files.readAllBytes(file);
        if (ByteBuffer.wrap(content).getShort(VERSION_OFFSET) < Opcodes.V1_8) {
          Files.write(file, modern(content, loader));
        }
      }
    }
  }

  private static byte[] modern(byte[] content, ClassLoader loader) {
    ClassWriter writer =
        new ClassWriter(ClassWriter.COMPUTE_FRAMES) {
          @Override
          protected ClassLoader getClassLoader() {
            return loader;
          }
        };
    ClassVisitor version =
        new ClassVisitor(Opcodes.ASM9, writer) {
          @Override
          public void visit(
              int old, int access, String name, String generic, String above, String[] faces) {
            super.visit(Opcodes.V1_8, access, name, generic, above, faces);
          }
        };
    new ClassReader(content).accept(version, ClassReader.SKIP_FRAMES);
    return writer.toByteArray();
  }
}
