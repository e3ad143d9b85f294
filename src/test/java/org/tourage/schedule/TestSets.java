package org.tourage.schedule;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The published test sets, a second for their unit of time. */
final class TestSets {
  private TestSets() {}

  record Instance(String name, SchedulingProblem.Builder builder, OptionalInt published) {
    SchedulingProblem problem() {
      return builder.build();
    }
  }

  static List<Instance> successors() {
    return read("psplib-j30-sample.txt", false);
  }

  static List<Instance> greatestLags() {
    return read("progenmax-j10-sample.txt", true);
  }

  private static List<Instance> read(String file, boolean lags) {
    try {
      List<Instance> all = new ArrayList<>();
      List<String> block = new ArrayList<>();
      for (String line : Files.readAllLines(Path.of("reference-data/scheduling", file))) {
        if (line.equals("end")) {
          all.add(instance(block, lags));
          block.clear();
        } else if (!line.isBlank() && !line.startsWith("#")) {
          block.add(line);
        }
      }
      return all;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Instance instance(List<String> block, boolean lags) {
    String[] head = block.get(0).split(" ");
    String[] capacity = head[1].split("\\|");
    SchedulingProblem.Builder builder = SchedulingProblem.builder();
    for (int r = 0; r < capacity.length; r++) {
      builder.resource(Resource.of("r" + r, Integer.parseInt(capacity[r])));
    }
    List<String[]> rows = block.stream().skip(1).map(line -> line.split(" ")).toList();
    Map<String, Integer> length = new HashMap<>();
    for (int k = 0; k < rows.size(); k++) {
      String[] row = rows.get(k);
      length.put(row[0], Integer.parseInt(row[1]));
      Task task = Task.of(row[0], Duration.ofSeconds(length.get(row[0])));
      if (lags && k == 0) {
        task = task.endingBy(Duration.ZERO);
      }
      for (int r = 0; r < capacity.length; r++) {
        int demand = Integer.parseInt(row[2 + r]);
        if (demand > 0 && length.get(row[0]) > 0) {
          task = task.needing(Need.of("r" + r, demand));
        }
      }
      builder.task(task);
    }
    String last = rows.get(rows.size() - 1)[0];
    for (String[] row : rows) {
      String then = row[2 + capacity.length];
      for (String one : then.equals("-") ? new String[0] : then.split(",")) {
        if (!lags) {
          builder.link(Link.endToStart(row[0], one));
        } else {
          String[] pair = one.split(":");
          builder.link(
              Link.startToStart(row[0], pair[0])
                  .atLeast(Duration.ofSeconds(Integer.parseInt(pair[1]))));
        }
      }
      if (lags && !row[0].equals(last)) {
        builder.link(Link.endToStart(row[0], last));
      }
    }
    return new Instance(
        head[0],
        builder,
        head[2].equals("unsat") ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(head[2])));
  }
}
