package org.tourage.command;

import java.util.List;
import org.tourage.command.FileParts.Numbered;
import org.tourage.command.FileParts.OwnIngredient;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.LabelText;

/** The ingredients that a recipe file describes itself, beside those of the catalogue. */
final class OwnIngredients {
  private OwnIngredients() {}

  /** The catalogue with the file's own; what can't be read is complained of, line by line. */
  static Catalogue of(RecipeFile file, List<Complaint> complaints) {
    Catalogue catalogue = Catalogue.builtIn();
    for (OwnIngredient own : file.ingredients()) {
      List<Numbered> lines = own.lines();
      LabelText.Reading reading =
          LabelText.parse(own.name(), lines.stream().map(Numbered::text).toList());
      for (LabelText.Problem problem : reading.problems()) {
        Origin origin =
            problem.line() == 0
                ? own.origin()
                : Origin.line(own.origin().file(), lines.get(problem.line() - 1).number());
        complaints.add(new Complaint(origin, problem.problem()));
      }
      if (reading.ingredient().isPresent()) {
        catalogue = catalogue.with(reading.ingredient().get(), reading.names());
      }
    }
    return catalogue;
  }
}
