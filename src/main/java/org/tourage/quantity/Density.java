package org.tourage.quantity;

import javax.measure.Quantity;

/**
 * Mass by volume, kept in kilograms per cubic metre; the units API has no such quantity of its own.
 */
public interface Density extends Quantity<Density> {}
