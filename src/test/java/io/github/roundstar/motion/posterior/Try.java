package io.github.roundstar.motion.posterior;
public class Try {
  public static void main(String[] a) {
    for (int i=2;i<a.length;i++){ int s=Integer.parseInt(a[i]);
      PriorNight night=PriorNight.of(s,Priors.USUAL,a[1].equals("worm"),Integer.parseInt(a[0]),1);
      System.out.println(s+" "+night.toString().substring(0,110));
      for (Resolution r: new Resolution[]{Resolution.USUAL,new Resolution(1.0,14,16),new Resolution(0.7,18,20)}) {
      AxisPosterior p=AxisPosterior.of(night.model(),r);
      System.out.println("   R "+f(p.strength())+" one "+f(p.oneWay())+" late "+f(p.delay())+" noise "+f(p.noise())+" mem "+f(p.memory())+" wander "+f(p.wander())+" play "+f(p.play())+" logEv "+p.logEvidence()+" "+p.counts());
      }
    }
  }
  static String f(Figure x){return String.format("%.4f[%.4f,%.4f]",x.estimate().value(),x.estimate().lo95(),x.estimate().hi95());}
}
