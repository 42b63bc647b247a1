package io.github.roundstar.formats;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * YAML as a plain tree. Nothing is constructed: the text is composed to nodes and every scalar is
 * taken as its text. Of the tags only {@code !!omap} matters (a list of one-entry maps that is a
 * map); aliases and keys given twice are refused.
 */
final class YamlTree {
  private static final int DEEPEST = 16;
  private static final String ORDERED_MAP = "tag:yaml.org,2002:omap";
  private static final String REMEDY =
      "mend the YAML of the header: key: value, two spaces to a level, every key once, no aliases";

  private final String file;
  private final long firstLine;
  private final Set<Node> seen = Collections.newSetFromMap(new IdentityHashMap<>());

  private YamlTree(String file, long firstLine) {
    this.file = file;
    this.firstLine = firstLine;
  }

  /**
   * Reads YAML whose first line is line {@code firstLine} of the file; an empty text is an empty
   * map.
   */
  static HeaderNode read(String file, long firstLine, String yaml) throws FormatException {
    YamlTree tree = new YamlTree(file, firstLine);
    LoaderOptions limits = new LoaderOptions();
    limits.setNestingDepthLimit(DEEPEST);
    // Harmless: a tag only matters to a constructor, and there is none.
    limits.setTagInspector(tag -> true);
    try {
      Node root = new Yaml(limits).compose(new StringReader(yaml));
      return root == null ? HeaderNode.map(firstLine, Map.of()) : tree.node(root);
    } catch (MarkedYAMLException e) {
      long line = e.getProblemMark() == null ? 0 : firstLine + e.getProblemMark().getLine();
      throw tree.fault(line, "YAML: " + e.getProblem());
    } catch (YAMLException e) {
      String what = String.valueOf(e.getMessage()).lines().findFirst().orElse("cannot be read");
      throw tree.fault(0, "YAML: " + what);
    }
  }

  private HeaderNode node(Node node) throws FormatException {
    long line = line(node);
    if (!seen.add(node)) {
      throw fault(line, "YAML: an alias (*name)");
    }
    if (node instanceof ScalarNode scalar) {
      return HeaderNode.text(line, scalar.getValue());
    }
    if (node instanceof SequenceNode list) {
      return node.getTag().getValue().equals(ORDERED_MAP) ? orderedMap(list) : list(list);
    }
    Map<String, HeaderNode> entries = new LinkedHashMap<>();
    addAll(entries, (MappingNode) node);
    return HeaderNode.map(line, entries);
  }

  private HeaderNode list(SequenceNode list) throws FormatException {
    List<HeaderNode> items = new ArrayList<>();
    for (Node item : list.getValue()) {
      items.add(node(item));
    }
    return HeaderNode.list(line(list), items);
  }

  private HeaderNode orderedMap(SequenceNode list) throws FormatException {
    Map<String, HeaderNode> entries = new LinkedHashMap<>();
    for (Node item : list.getValue()) {
      if (!(item instanceof MappingNode map) || map.getValue().size() != 1 || !seen.add(item)) {
        throw fault(line(item), "YAML: an entry of an !!omap that is not one key: value");
      }
      addAll(entries, map);
    }
    return HeaderNode.map(line(list), entries);
  }

  private void addAll(Map<String, HeaderNode> entries, MappingNode map) throws FormatException {
    for (NodeTuple tuple : map.getValue()) {
      if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
        throw fault(line(tuple.getKeyNode()), "YAML: a key that is not a word");
      }
      if (!seen.add(key)) {
        throw fault(line(key), "YAML: an alias (*name)");
      }
      if (entries.put(key.getValue(), node(tuple.getValueNode())) != null) {
        throw fault(line(key), "YAML: the key " + key.getValue() + " is given twice");
      }
    }
  }

  private long line(Node node) {
    return firstLine + node.getStartMark().getLine();
  }

  private FormatException fault(long line, String what) {
    return new FormatException(file, line, what, REMEDY);
  }
}
