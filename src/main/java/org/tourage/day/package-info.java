/**
 * Floor 5: the day. A {@link org.tourage.day.Kitchen}, a {@link org.tourage.day.Product} with its
 * {@link org.tourage.day.Procedure} and an {@link org.tourage.day.Order} make a {@link
 * org.tourage.day.DayPlan}; {@link org.tourage.day.BakeDay} works it through all rooms and returns
 * typed results. It is the only room that joins the trades; it reads no text and prints none. Start
 * with {@link org.tourage.day.BakeDay#of}.
 *
 * @serial exclude the serial form travels between machines of one version only
 */
@NullMarked
package org.tourage.day;

import org.jspecify.annotations.NullMarked;
