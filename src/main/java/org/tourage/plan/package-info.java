/** Floor 4: the timetable. */
@NullMarked
package org.tourage.plan;

import org.jspecify.annotations.NullMarked;
