/** An embedding program. */
module shop {
  requires org.tourage;
}
