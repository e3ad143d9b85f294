package org.tourage.lamination;

import static org.tourage.quantity.BakeryUnits.METRE;

import java.io.Serializable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.AmountFormat;

/**
 * Block, cover and closed packet by conservation of volume; metres and cubic metres inside. The fat
 * has the thickness to which the baker shapes it, be it the block or, in the inverted way, the
 * sheet around the dough; the dough's thickness follows.
 */
record PacketGeometry(
    double blockLength,
    double blockWidth,
    double blockThickness,
    double coverLength,
    double coverWidth,
    double coverThickness,
    double length,
    double width)
    implements Serializable {

  static PacketGeometry of(
      LockIn lockIn, LaminationPlan.Setup setup, double doughVolume, double fatVolume) {
    double thick = setup.fatThickness().in(METRE);
    double margins = 2 * setup.margin().in(METRE);
    boolean outside = lockIn.fatOutside();
    int core = outside ? lockIn.doughBands() : lockIn.fatBands();
    int cover = outside ? lockIn.fatBands() : lockIn.doughBands();
    if (lockIn.diamond()) {
      // a square block, corner to side, on a square sheet whose corners meet in the middle
      double packet =
          outside ? Math.sqrt(fatVolume / thick / cover) : Math.sqrt(fatVolume / thick) + margins;
      double block = packet - margins;
      check(block, packet, setup);
      double side = Math.sqrt(cover) * packet;
      return outside
          ? new PacketGeometry(
              block, block, doughVolume / (block * block), side, side, thick, packet, packet)
          : new PacketGeometry(
              block, block, thick, side, side, doughVolume / (side * side), packet, packet);
    }
    double width = setup.packetWidth().in(METRE);
    double blockWidth = width - margins;
    if (outside) {
      double coverLength = fatVolume / (width * thick);
      double length = coverLength / cover;
      double blockLength = core * (length - margins);
      check(blockLength, length, setup);
      return new PacketGeometry(
          blockLength,
          blockWidth,
          doughVolume / (blockLength * blockWidth),
          coverLength,
          width,
          thick,
          length,
          width);
    }
    double blockLength = fatVolume / (blockWidth * thick);
    double length = blockLength / core + margins;
    return new PacketGeometry(
        blockLength,
        blockWidth,
        thick,
        cover * length,
        width,
        doughVolume / (cover * length * width),
        length,
        width);
  }

  private static void check(double block, double packet, LaminationPlan.Setup setup) {
    if (!(block > 0)) {
      AmountFormat format = AmountFormat.metric();
      throw new BakeryException(
          Reason.INCONSISTENT,
          "the sheet of fat is too small to enclose anything",
          "a packet of "
              + format.length(METRE.amount(packet))
              + " with margins of "
              + format.length(setup.margin()),
          "shape the fat thinner than "
              + format.length(setup.fatThickness())
              + ", or take smaller margins");
    }
  }
}
