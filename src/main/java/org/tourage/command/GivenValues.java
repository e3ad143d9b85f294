package org.tourage.command;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.command.FileParts.Value;

/** What a file sets, read once; remembers what was used, and collects the complaints. */
final class GivenValues {
  private final RecipeFile file;
  private final List<Complaint> complaints;
  private final Set<String> used = new HashSet<>();
  private final Map<String, Object> values = new LinkedHashMap<>();

  GivenValues(RecipeFile file) {
    this.file = file;
    this.complaints = new ArrayList<>(file.complaints());
    for (Setting<?> setting : Settings.all()) {
      Value value = file.value(setting);
      if (value != null) {
        attempt(value.origin(), () -> values.put(setting.key(), setting.read(value.text())));
      }
    }
  }

  /** The file that they stand in. */
  RecipeFile file() {
    return file;
  }

  List<Complaint> complaints() {
    return complaints;
  }

  void attempt(Origin origin, Runnable work) {
    try {
      work.run();
    } catch (BakeryException wrong) {
      complain(origin, wrong);
    }
  }

  void complain(Origin origin, BakeryException wrong) {
    complaints.add(new Complaint(origin, wrong));
  }

  void refuse() {
    if (!complaints.isEmpty()) {
      complaints.sort(Comparator.comparingInt(c -> c.origin().line()));
      throw new WrongInput(complaints);
    }
  }

  /** The value of a setting, or its default. Types are those of the table. */
  @SuppressWarnings("unchecked")
  <T> Optional<T> get(Setting<T> setting) {
    used.add(setting.key());
    Object value = values.get(setting.key());
    return Optional.ofNullable(value == null ? setting.byDefault() : (T) value);
  }

  boolean isSet(Setting<?> setting) {
    return file.value(setting) != null;
  }

  Origin origin(Setting<?> setting) {
    Value value = file.value(setting);
    return value == null ? Origin.line(file.name(), 0) : value.origin();
  }

  void unused() {
    file.own()
        .forEach(
            (key, value) -> {
              if (!used.contains(key)) {
                complain(
                    value.origin(),
                    new BakeryException(
                        Reason.INCONSISTENT,
                        "nothing uses this setting",
                        "\"" + key + ": " + value.text() + "\"",
                        "leave it out, or add what it belongs to (a sheet needs [roll-in], what is"
                            + " replaced needs what is on hand)"));
              }
            });
  }
}
