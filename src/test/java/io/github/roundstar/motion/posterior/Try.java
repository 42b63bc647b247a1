package io.github.roundstar.motion.posterior;
public class Try {
  public static void main(String[] a) {
    int frames=Integer.parseInt(a[0]); boolean worm=a[1].equals("worm"); int n=Integer.parseInt(a[2]);
    for (int s=1;s<=n;s++){
      PriorNight night=PriorNight.of(s,Priors.USUAL,worm,frames,1);
      long t=System.nanoTime();
      AxisPosterior p=AxisPosterior.of(night.model());
      double ms=(System.nanoTime()-t)/1e6;
      System.out.println(night);
      System.out.printf("  %.1f ms R %s late %s noise %s mem %s wander %s play %s (%.3f) amp %s %s%n",ms,f(p.strength()),f(p.late()),f(p.noise()),f(p.memory()),f(p.wander()),f(p.play()),p.playProbability(),f(p.drawn(d->PriorNight.amplitude(d.columns()[0]),60)),p.explanations());
    }
  }
  static String f(Figure x){return String.format("%.4f [%.4f %.4f] L%.2f",x.estimate().value(),x.estimate().lo95(),x.estimate().hi95(),x.learned());}
}
