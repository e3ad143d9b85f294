/**
 * Bakery arithmetic: formulas in baker's percent, household measures, dough temperature,
 * lamination, cutting plans, oven profiles and timetables.
 */
module org.tourage {
  requires transitive java.measure;
  requires tech.units.indriya;
  requires static org.jspecify;
  requires static com.fasterxml.jackson.core;
  requires static org.chocosolver.solver;

  exports org.tourage.advice;
  exports org.tourage.command;
  exports org.tourage.doughtemperature;
  exports org.tourage.fermentation;
  exports org.tourage.formula;
  exports org.tourage.ingredient;
  exports org.tourage.label;
  exports org.tourage.lamination;
  exports org.tourage.makeup;
  exports org.tourage.oven;
  exports org.tourage.physics;
  exports org.tourage.day;
  exports org.tourage.quantity;
  exports org.tourage.schedule;
  exports org.tourage.sheet;
  exports org.tourage.substitution;
}
