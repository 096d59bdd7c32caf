package org.flitchbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One Markdown page of the project.
 *
 * @param lines without the line ends
 */
public record MarkdownPage(Path file, List<String> lines) {

  private static final Pattern LINK = Pattern.compile("\\[[^\\]]*\\]\\(([^)\\s]+)\\)");
  private static final Set<String> NOT_OURS = Set.of(".git", "target", "out");

  /** Every page of the project. */
  static Stream<Path> all() throws IOException {
    Path top = Path.of("");
    try (Stream<Path> files = Files.walk(top)) {
      return files
          .filter(file -> file.toString().endsWith(".md"))
          .filter(file -> !NOT_OURS.contains(file.getName(0).toString()))
          .sorted()
          .toList()
          .stream();
    }
  }

  public static MarkdownPage of(Path file) throws IOException {
    return new MarkdownPage(file, Files.readAllLines(file));
  }

  /** What stands under a heading, up to the next one of any level. */
  MarkdownPage under(String heading) {
    List<String> found = new ArrayList<>();
    boolean inside = false;
    boolean fenced = false;
    for (String line : lines) {
      fenced ^= line.startsWith("```");
      if (!fenced && line.startsWith("#")) {
        inside = line.replaceFirst("^#+ ", "").equals(heading);
      } else if (inside) {
        found.add(line);
      }
    }
    return new MarkdownPage(file, found);
  }

  /** The fenced blocks of that language; all of them where it is "". */
  public List<String> blocks(String language) {
    List<String> blocks = new ArrayList<>();
    StringBuilder block = null;
    boolean wanted = false;
    for (String line : lines) {
      if (line.startsWith("```") && block == null) {
        block = new StringBuilder();
        wanted = language.isEmpty() || line.equals("```" + language);
      } else if (line.startsWith("```")) {
        if (wanted) {
          blocks.add(block.toString());
        }
        block = null;
      } else if (block != null) {
        block.append(line).append('\n');
      }
    }
    return blocks;
  }

  /** The relative links whose file, or whose heading in it, does not exist. */
  List<String> deadLinks() throws IOException {
    List<String> dead = new ArrayList<>();
    for (String line : prose()) {
      Matcher link = LINK.matcher(line);
      while (link.find()) {
        if (!link.group(1).matches("(?i)[a-z]+:.*") && !leads(link.group(1))) {
          dead.add(link.group(1));
        }
      }
    }
    return dead;
  }

  private boolean leads(String link) throws IOException {
    String[] parts = link.split("#", 2);
    Path target = parts[0].isEmpty() ? file : file.resolveSibling(parts[0]).normalize();
    return Files.exists(target)
        && (parts.length == 1
            || of(target).prose().stream()
                .anyMatch(line -> line.startsWith("#") && anchor(line).equals(parts[1])));
  }

  private List<String> prose() {
    List<String> prose = new ArrayList<>();
    boolean fenced = false;
    for (String line : lines) {
      fenced ^= line.startsWith("```");
      if (!fenced) {
        prose.add(line);
      }
    }
    return prose;
  }

  /** As the common readers of Markdown name a heading. */
  private static String anchor(String heading) {
    String words = heading.replaceFirst("^#+ ", "").strip().toLowerCase(Locale.ROOT);
    return words.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-');
  }
}
