package io.github.roundstar.motion.posterior;
public class Try {
  public static void main(String[] a) {
    int frames=Integer.parseInt(a[0]); boolean worm=a[1].equals("worm"); int n=Integer.parseInt(a[2]);
    for (int s=1;s<=n;s++){
      PriorNight night=PriorNight.of(s,Priors.USUAL,worm,frames,1);
      long t=System.nanoTime();
      AxisPosterior p=AxisPosterior.of(night.model());
      double ms=(System.nanoTime()-t)/1e6;
      System.out.printf("  %.1f ms %s%n",ms,p.counts());
    }
  }
}
