package io.github.roundstar.motion.posterior;
public class Try2 { public static void main(String[] a) throws Exception {
 var m=DensePosteriorTest.class.getDeclaredMethod("sixty",long.class,Priors.class); m.setAccessible(true);
 Priors pr=Priors.USUAL.withStrengths(java.util.List.of(new Priors.Strength(0.8, 1, 0.1), new Priors.Strength(0.2, 1.4, 0.3)));
 AxisModel model=(AxisModel)m.invoke(null,7L,pr);
 for (Resolution r: new Resolution[]{Resolution.USUAL,new Resolution(1.6,8,16),new Resolution(1.6,12,8),new Resolution(1.6,12,16),new Resolution(1.2,8,8),new Resolution(1.2,12,16),new Resolution(0.6,18,24)}) {
  AxisPosterior p=AxisPosterior.of(model,r);
  System.out.println(r+" "+p.logEvidence()+" "+java.util.Arrays.toString(p.strengthMoments())+java.util.Arrays.toString(p.columnMoments(0,0)));
 }
 for (double[] st: new double[][]{}) {
  System.out.println(java.util.Arrays.toString(new DensePosterior(model).sum(st[0],st[1],st[2])));
 }
}}
