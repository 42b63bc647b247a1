package io.github.roundstar.worlds;
public class Try4 { public static void main(String[] a) throws Exception {
  WorldNight n=World.valueOf(a[0]).night(Long.parseLong(a[1])); StarTruth s=n.star();
  System.err.println(n.truth().ra()+" cam "+n.truth().cameraAngleDeg()+" raWander "+n.truth().raWander()+" "+n.truth().wander()+" dec "+n.truth().runs().get(0).declinationDeg()+" gain "+n.plan().ra.gain+" believed "+n.plan().believedGuideRate+" air "+n.plan().airMemorySeconds+" share "+n.plan().airShare+" jitter "+n.plan().jitterShare+" mark "+n.plan().timeMark+" longest "+n.plan().ra.longestMs+" lat "+n.plan().latencySeconds+" del "+n.plan().delaySeconds+" step "+n.plan().stepSeconds);
  for(int i=0;i<s.size();i++) System.out.println(s.exposureStartSeconds(i)+" "+s.exposureEndSeconds(i)+" "+s.eastArcsec(i)+" "+s.noiseEastArcsec(i)+" "+n.rows().raPulseMs[i]+" "+n.rows().decPulseMs[i]);
}}
