package io.github.roundstar.diagnosis;
import io.github.roundstar.ingest.*; import io.github.roundstar.model.*; import io.github.roundstar.motion.*; import io.github.roundstar.motion.posterior.*; import io.github.roundstar.worlds.*; import java.nio.file.*; import java.util.*;
public class Try3 { public static void main(String[] a) throws Exception {
  World w=World.valueOf(a[0]);
  for(long seed=Long.parseLong(a[1]);seed<=Long.parseLong(a[2]);seed++){
    WorldNight n=w.night(seed); Path p=Files.createTempFile("n",".ecsv"), e=Files.createTempFile("n",".toml");
    Files.writeString(p,n.guideTable(WorldNight.Precision.ROUNDED)); Files.writeString(e,n.equipment());
    List<GuideRun> runs=GuideTableReader.read(p).runs(); Equipment eq=EquipmentReader.read(e); Files.delete(p);Files.delete(e);
    MountKnowledge k=MountKnowledge.of(runs,eq); Truth t=n.truth();
    AxisKnowledge ra=k.ra().value().orElseThrow(); System.out.println("logEv "+ra.posterior().logEvidence()+" "+Arrays.stream(new double[]{0,1,2,3,4,5,6,7,8,9}).mapToObj(x->ra.posterior().columnString((int)x)).toList()+t.gears());
    double truth=t.ra().meanArcsecPerSecond();
    System.out.printf(Locale.ROOT,"%s %d ratio %.3f R/true %.3f [%.3f %.3f] late %s mem %s noise %.3f/%.3f lag1 %.2f wander %s cad %.2f exp %.2f delay %.2f frames %d runs %d worm %.1f amp %s fam %d expl %s%n",w,seed,t.ra().ratio(),ra.responseArcsecPerSecondAxis().estimate().value()/truth,ra.responseArcsecPerSecondAxis().estimate().lo95()/truth,ra.responseArcsecPerSecondAxis().estimate().hi95()/truth,f(ra.posterior().delay()),f(ra.posterior().memory()),ra.noiseArcsec().estimate().value(),t.noiseArcsec().ra(),t.runs().get(0).noiseLag1().ra(),f(ra.posterior().wander())+"/"+t.wander()+t.raWander(),Cadence.medianSeconds(runs.get(0).frames()).orElse(0),runs.get(0).camera().exposureSeconds().orElse(0),t.pulseDelaySeconds(),runs.get(0).frames().size(),runs.size(),t.wormAmplitudeArcsecAxis(),ra.nearest(t.gears().get(0).periodSeconds(),.2).map(x->f(ra.amplitudeArcsecAxis(x))).orElse("-"),ra.familyCount(),ra.posterior().explanations().stream().map(x->String.format("%.2f:%.2f",x.probability(),x.strength()/t.ra().ratio())).toList());
  }}
  static String f(Figure x){return String.format("%.3f[%.3f,%.3f]",x.estimate().value(),x.estimate().lo95(),x.estimate().hi95());}
}
