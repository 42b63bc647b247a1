import java.io.File;
import java.util.Random;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsFactory;
import nom.tam.fits.Header;
import nom.tam.fits.ImageHDU;

/** Writes an invented frame of 24 megapixels, 16 bits: 2000 stars on a noisy background. */
final class LargeFrame {
  private static final int WIDTH = 6000;
  private static final int HEIGHT = 4000;
  private static final int STARS = 2000;
  private static final double SIGMA_PX = 1.4;

  public static void main(String[] arguments) throws Exception {
    Random random = new Random(24);
    short[][] pixels = new short[HEIGHT][WIDTH];
    for (short[] row : pixels) {
      for (int x = 0; x < WIDTH; x++) {
        row[x] = (short) (1000 + 12 * random.nextGaussian() - 32768);
      }
    }
    for (int star = 0; star < STARS; star++) {
      double centreX = 20 + (WIDTH - 40) * random.nextDouble();
      double centreY = 20 + (HEIGHT - 40) * random.nextDouble();
      double peak = 300 * Math.pow(100, random.nextDouble());
      for (int y = (int) centreY - 8; y <= centreY + 8; y++) {
        for (int x = (int) centreX - 8; x <= centreX + 8; x++) {
          double r = Math.hypot(x - centreX, y - centreY) / SIGMA_PX;
          pixels[y][x] += (short) (peak * Math.exp(-r * r / 2));
        }
      }
    }
    Fits fits = new Fits();
    ImageHDU image = (ImageHDU) FitsFactory.hduFactory(pixels);
    Header header = image.getHeader();
    header.addValue("BZERO", 32768, "unsigned");
    header.addValue("BSCALE", 1, "");
    fits.addHDU(image);
    fits.write(new File(arguments[0]));
    fits.close();
  }
}
