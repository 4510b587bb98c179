// The year loop's arithmetic for draw, heater, collector circuit, coil and tank in plain C++, as a yardstick for the library's speed.
// Reads the parameters that native.ts wrote, steps the year a number of times, prints the median time and what came out.
// It leaves out what is not that arithmetic: pressure of the loop, boiling, balance, hourly columns, the house without the sun.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

using std::vector;

static vector<double> file;
static size_t place = 0;
static double one() { return file[place++]; }
static vector<double> many() {
  const size_t count = (size_t)one();
  vector<double> values(file.begin() + place, file.begin() + place + count);
  place += count;
  return values;
}

struct Fluid {
  double lowest, highest, origin, scale;
  vector<double> density, heat;
  double evaluate(const vector<double>& c, double t) const {
    const double u = (std::min(std::max(t, lowest), highest) - origin) * scale;
    double sum = 0;
    for (int power = (int)c.size() - 1; power >= 0; power--) sum = sum * u + c[power];
    return sum;
  }
};

static double meanOfRise(double x) {
  if (x > 1e-2) return (1 + std::expm1(-x) / x) / x;
  return 1.0 / 2 - x * (1.0 / 6 - x * (1.0 / 24 - x * (1.0 / 120 - x * (1.0 / 720 - x / 5040))));
}

static const double WATER = 4.1468e6;
static const int FINENESS = 8, ROWS = 180, FLOW_ROWS = 60, FLOW_COLUMNS = 72;

// Drivers and design
static int stepsPerHour, darkSteps;
static vector<double> lit, ambient, mains, tapVolume, irradiance, absorbed, pumpSupply, skyLoss;
static double room, startSupply, stopSupply, limit, release_, relief, risePerLight, tapTarget, drawFlow;
static double heaterCapacity, heaterLoss, heaterRoom, heaterPower, heaterSet, heaterStart;
static Fluid fluid;
// Circuit
static double absorberCapacity, nodeArea, a1, a2;
static vector<double> pipeCapacity, pipeConductance, coilShare;
static int coilBottom, collectorNodes, tankNodes;
static double circuitStart, tankStart, nodeVolume, nodeCapacity;
// Coil
static double frictionOfBend, exponent, factor, criticalReynolds, criticalRise, wallResistance, typicalOutside, rowsPerKelvin;
static vector<double> inside, outside;
// Pump
static double flowLowest, flowRowsPerKelvin;
static vector<double> fullPower, flowTable;
// Tank, by steps per hour: passes, ratio, lossShare
struct Rest { int passes; double ratio; vector<double> lossShare; };
static vector<double> stepCounts;
static vector<Rest> rests;
static vector<vector<double>> pipeDecays;

static void readAll() {
  stepsPerHour = (int)one(); darkSteps = (int)one();
  lit = many(); ambient = many(); mains = many(); tapVolume = many();
  irradiance = many(); absorbed = many(); pumpSupply = many(); skyLoss = many();
  room = one(); startSupply = one(); stopSupply = one(); limit = one(); release_ = one(); relief = one();
  risePerLight = one(); tapTarget = one(); drawFlow = one();
  heaterCapacity = one(); heaterLoss = one(); heaterRoom = one(); heaterPower = one(); heaterSet = one(); heaterStart = one();
  fluid.lowest = one(); fluid.highest = one(); fluid.origin = one(); fluid.scale = one();
  fluid.density = many(); fluid.heat = many();
  absorberCapacity = one(); nodeArea = one(); a1 = one(); a2 = one();
  pipeCapacity = many(); pipeConductance = many(); coilShare = many();
  coilBottom = (int)one(); collectorNodes = (int)one(); tankNodes = (int)one();
  circuitStart = one(); tankStart = one(); nodeVolume = one(); nodeCapacity = one();
  frictionOfBend = one(); exponent = one(); factor = one(); criticalReynolds = one(); criticalRise = one();
  wallResistance = one(); typicalOutside = one(); rowsPerKelvin = one();
  inside = many(); outside = many();
  flowLowest = one(); flowRowsPerKelvin = one(); fullPower = many(); flowTable = many();
  stepCounts = many();
  for (double count : stepCounts) {
    Rest rest;
    rest.passes = (int)one(); rest.ratio = one(); rest.lossShare = many();
    rests.push_back(rest);
    vector<double> decay;
    for (size_t at = 0; at < pipeCapacity.size(); at++)
      decay.push_back(std::exp((-pipeConductance[at] * 3600) / (count * pipeCapacity[at])));
    pipeDecays.push_back(decay);
  }
}

// State
static vector<double> tank, coilRise, drift, middle, absorber, pipeT;
static double heaterT, heaterOut, heaterHeat, heaterLost;
static bool running, limited, heated;
// Ring
static vector<double> rx, rshare, rown, rrest, rstart, rinlet, rrise, rmap, source, perWeights, drifts;
static double solarHeat, coilHeatSum, peak, hottestAbsorber, coldestAbsorber, pumpHours, tapHeat, tankLossSum, collectorLossSum;

static void stepHeater(double volume, double inlet, double duration) {
  const double start = heaterT;
  const double flow = (volume * WATER) / duration;
  const double total = flow + heaterLoss;
  const double src = flow * inlet + heaterLoss * heaterRoom;
  const double x = (total * duration) / heaterCapacity;
  const double late = meanOfRise(x);
  const double risen = 1 - x * late;
  const double perWatt = (duration / heaterCapacity) * risen;
  const double free_ = start + (src - total * start) * perWatt;
  const double power = std::min(std::max((heaterSet - free_) / perWatt, 0.0), heaterPower);
  const double rate = (src + power - total * start) * (duration / heaterCapacity);
  const double mean = start + rate * late;
  heaterT = start + rate * risen;
  heaterOut = mean;
  heaterHeat = power * duration;
  heaterLost = heaterLoss * (mean - heaterRoom) * duration;
}

static double hotShare(double target, double cold, double hot) {
  return hot <= target ? 1 : std::max(target - cold, 0.0) / (hot - cold);
}

static double outletOf(double volume) {
  int node = tankNodes - 1;
  double left = volume / nodeVolume;
  if (left <= 1 || node == 0) return tank[node];
  const double drawn = std::min(left, (double)node + 1);
  left = drawn;
  double sum = 0;
  for (; left > 0; node--) { sum += std::min(left, 1.0) * tank[node]; left--; }
  return sum / drawn;
}

static double limitedSlope(double below, double above) {
  const double product = below * above;
  return product > 0 ? (2 * product) / (below + above) : 0;
}

static double drawThrough(double volumes, double inlet) {
  if (volumes <= 0) return inlet;
  const int passes = (int)std::ceil(volumes);
  const double courant = volumes / passes;
  const double reach = 0.5 * (1 - courant);
  const int top = tankNodes - 1;
  double outlet = 0;
  for (int pass = 0; pass < passes; pass++) {
    double faceBelow = inlet, below = inlet;
    for (int node = 0; node < top; node++) {
      const double here = tank[node];
      const double face = here + reach * limitedSlope(here - below, tank[node + 1] - here);
      tank[node] = here + courant * (faceBelow - face);
      faceBelow = face;
      below = here;
    }
    const double here = tank[top];
    tank[top] = here + courant * (faceBelow - here);
    outlet += here;
  }
  return outlet / passes;
}

static void useWater(int hour, int steps) {
  const double duration = 3600.0 / steps;
  if (tapVolume[hour] > 0) {
    const double wanted = tapVolume[hour] / steps;
    const double cold = mains[hour];
    const double inlet = outletOf(wanted);
    const double start = heaterT;
    double share = hotShare(tapTarget, cold, start);
    for (int trial = 0; trial < 2; trial++) {
      stepHeater(wanted * share, inlet, duration);
      heaterT = start;
      share = hotShare(tapTarget, cold, heaterOut);
    }
    const double hot = wanted * share;
    const double outlet = drawThrough(hot / nodeVolume, cold);
    stepHeater(hot, outlet, duration);
    solarHeat += hot * WATER * (outlet - cold);
    tapHeat += hot * WATER * (heaterOut - cold);
  } else {
    stepHeater(0, 0, duration);
  }
}

static double coilTurbulent(double reynolds, double rootPrandtl) {
  const double eighth = (0.3164 / std::sqrt(std::sqrt(reynolds)) + frictionOfBend) / 8;
  const double square = rootPrandtl * rootPrandtl;
  return (eighth * reynolds * square * rootPrandtl) / (1 + 12.7 * std::sqrt(eighth) * (square - 1));
}

static double coilNusselt(double reynolds, double rootPrandtl) {
  if (reynolds <= criticalReynolds) return 3.66 + factor * std::exp(exponent * std::log(reynolds)) * rootPrandtl;
  if (reynolds >= 2.2e4) return coilTurbulent(reynolds, rootPrandtl);
  const double laminar = 3.66 + criticalRise * rootPrandtl;
  const double share = (reynolds - criticalReynolds) / (2.2e4 - criticalReynolds);
  return laminar + share * (coilTurbulent(2.2e4, rootPrandtl) - laminar);
}

static double coilUA(double flow, double fluidT, double tankT) {
  const double y = std::min(std::max((fluidT - fluid.lowest) * rowsPerKelvin, 0.0), (double)ROWS);
  const int row = y < ROWS ? (int)y : ROWS - 1;
  const double f = y - row;
  const double* in = &inside[3 * row];
  const double reynolds = flow * (in[0] + (in[3] - in[0]) * f);
  const double rootPrandtl = in[1] + (in[4] - in[1]) * f;
  const double conductivity = in[2] + (in[5] - in[2]) * f;
  const double within = 1 / (1 / (coilNusselt(reynolds, rootPrandtl) * conductivity) + wallResistance);
  const double difference = fluidT - tankT;
  const double size = std::fabs(difference);
  double r = within / (within + typicalOutside);
  for (int pass = 0; pass < 2; pass++) {
    const double yo = std::min(std::max(((tankT + 0.5 * r * difference) * ROWS) / 140, 0.0), (double)ROWS);
    const int ro = yo < ROWS ? (int)yo : ROWS - 1;
    const double fo = yo - ro;
    const double* out = &outside[2 * ro];
    const double rise = (out[0] + (out[2] - out[0]) * fo) * std::cbrt(std::sqrt(size * r));
    const double sum = 0.6 + rise;
    const double film = (out[1] + (out[3] - out[1]) * fo) * sum * sum;
    r += (within * (1 - r) - film * r) / (within + film * (1 + rise / (3 * sum)));
  }
  return within * (1 - r);
}

static void closeRing() {
  const int parts = (int)rx.size();
  double mm = 1, mk = 0, m0 = 0, km = 0, kk = 1, k0 = 0;
  double lastX = -1, gone = 0, held = 0, settled = 0, turning = 0, bend = 0, late = 0;
  for (int part = 0, at = 0; part < parts; part++, at += 8) {
    const double number = rx[part];
    if (number != lastX) {
      lastX = number;
      if (number > 1e-2) {
        gone = 1 - std::exp(-number);
        held = gone / number;
        settled = 1 - held;
        bend = 0.5 * held - settled / number;
      } else {
        const double risen = meanOfRise(number);
        settled = number * risen;
        held = 1 - settled;
        gone = number * held;
        bend = 0.5 * held - risen;
      }
      late = settled - 0.5 * gone;
      turning = 2 * (gone - settled);
    }
    const double fromVolume = rown[part];
    const double driven = fromVolume * rshare[part];
    const double meanByMean = 1 - fromVolume + driven * settled;
    const double meanByTrend = driven * bend;
    const double trendByMean = driven * turning;
    const double trendByTrend = 1 - fromVolume + 2 * driven * (late - bend);
    const double mean = fromVolume * (settled * rrest[part] + held * rstart[part]);
    const double trend = fromVolume * turning * (rrest[part] - rstart[part]);
    double* m = &rmap[at];
    m[0] = meanByMean; m[1] = meanByTrend; m[2] = mean; m[3] = trendByMean;
    m[4] = trendByTrend; m[5] = trend; m[6] = gone; m[7] = late;
    const double mmB = mm, mkB = mk, m0B = m0;
    mm = meanByMean * mmB + meanByTrend * km;
    mk = meanByMean * mkB + meanByTrend * kk;
    m0 = meanByMean * m0B + meanByTrend * k0 + mean;
    km = trendByMean * mmB + trendByTrend * km;
    kk = trendByMean * mkB + trendByTrend * kk;
    k0 = trendByMean * m0B + trendByTrend * k0 + trend;
  }
  const double determinant = (1 - mm) * (1 - kk) - mk * km;
  double m = (m0 * (1 - kk) + mk * k0) / determinant;
  double k = (k0 * (1 - mm) + km * m0) / determinant;
  for (int part = 0, at = 0; part < parts; part++, at += 8) {
    rinlet[part] = m;
    const double g = rshare[part];
    rrise[part] = rmap[at + 6] * (g * m + rrest[part] - rstart[part]) + rmap[at + 7] * g * k;
    const double mean = rmap[at] * m + rmap[at + 1] * k + rmap[at + 2];
    k = rmap[at + 3] * m + rmap[at + 4] * k + rmap[at + 5];
    m = mean;
  }
  rinlet[parts] = m;
}

static double sourceAt(double start, double slope, double light, double air) {
  const double excess = start - air;
  return nodeArea * (light - (a1 + a2 * std::fabs(excess)) * excess) + slope * start;
}

static bool isIndoors(int at, int nodes) { return 4 * at >= nodes && 4 * at < 3 * nodes; }

static void circulate(double capacityRate, double conductance, double light, double air, double duration) {
  const int nodes = collectorNodes, coilNodes = (int)coilShare.size(), pipeNodes = (int)pipeT.size();
  const int hotNodes = pipeNodes >> 1, coilAt = nodes + hotNodes, coldAt = coilAt + coilNodes;
  double excess = 0;
  for (int node = 0; node < nodes; node++) excess += absorber[node] - air;
  const double slope = nodeArea * (a1 + 2 * a2 * std::fabs(excess / nodes));
  const double inletWeight = std::min(0.5, (0.5 * capacityRate) / slope);
  const double total = capacityRate + slope * (1 - inletWeight);
  const double absorberX = (total * duration) / absorberCapacity;
  const double absorberShare = (capacityRate - slope * inletWeight) / total;
  const double perTotal = 1 / total;
  double before = pipeT[pipeNodes - 1];
  for (int node = 0; node < nodes; node++) {
    const double here = absorber[node];
    const double mean = here + inletWeight * (before - here);
    source[node] = sourceAt(mean, slope, light, air);
    rx[node] = absorberX; rshare[node] = absorberShare; rown[node] = 1;
    rrest[node] = source[node] * perTotal; rstart[node] = here;
    before = here;
  }
  for (int at = 0; at < pipeNodes; at++) {
    const int part = at < hotNodes ? nodes + at : coldAt + at - hotNodes;
    const double loss = pipeConductance[at];
    const double rate = capacityRate + loss;
    rx[part] = (rate * duration) / pipeCapacity[at];
    rshare[part] = capacityRate / rate; rown[part] = 1;
    rrest[part] = (loss * (isIndoors(at, pipeNodes) ? room : air)) / rate;
    rstart[part] = pipeT[at];
  }
  const double inCoil = pipeT[hotNodes - 1];
  int low = coilBottom + coilNodes;
  bool poolWarms = false;
  double perWeight = 1, lastShare = -1, effectiveness = 0, perRate = 0;
  for (int piece = 0; piece < coilNodes; piece++) {
    const int node = coilBottom + coilNodes - 1 - piece;
    const double here = tank[node];
    const bool warms = inCoil > here;
    if (node < low || warms != poolWarms) {
      const int highest = warms ? tankNodes - 1 : node, lowest = warms ? coilBottom : 0;
      int high = node;
      while (high < highest && tank[high + 1] - tank[high] < 0.01) high++;
      low = node;
      while (low > lowest && tank[low] - tank[low - 1] < 0.01) low--;
      perWeight = (double)(node - std::max(low, coilBottom) + 1) / (high - low + 1);
      poolWarms = warms;
    }
    if (coilShare[node - coilBottom] != lastShare) {
      lastShare = coilShare[node - coilBottom];
      effectiveness = -std::expm1((-conductance * lastShare) / capacityRate);
      perRate = nodeCapacity / (capacityRate * effectiveness);
    }
    const double slow = std::min(std::max(drift[node], -1 / duration), 1 / duration);
    drifts[piece] = slow * duration * perWeight;
    perWeights[piece] = perWeight;
    const int at = coilAt + piece;
    rx[at] = (duration / perRate) * perWeight; rshare[at] = 1; rown[at] = effectiveness;
    rrest[at] = slow * perRate; rstart[at] = here;
  }
  closeRing();
  double lost = 0;
  for (int node = 0; node < nodes; node++) {
    absorber[node] += rrise[node];
    lost += slope * (inletWeight * rinlet[node] + (1 - inletWeight) * rinlet[node + 1]) - source[node];
  }
  collectorLossSum += (lost + light * nodeArea * nodes) * duration;
  for (int at = 0; at < pipeNodes; at++) {
    const int part = at < hotNodes ? nodes + at : coldAt + at - hotNodes;
    pipeT[at] += rrise[part];
  }
  double coil = 0;
  for (int piece = 0; piece < coilNodes; piece++) {
    const int node = coilBottom + coilNodes - 1 - piece;
    const double risen = (rrise[coilAt + piece] - drifts[piece]) / perWeights[piece];
    tank[node] += risen;
    coilRise[node] = risen;
    coil += risen;
  }
  heated = true;
  coilHeatSum += coil * nodeCapacity;
}

static void standStill(int count, int steps, double light, double air) {
  const double duration = 3600.0 / steps;
  double lost = 0;
  for (int node = 0; node < collectorNodes; node++) {
    const double start = absorber[node];
    const double tangent = nodeArea * (a1 + 2 * a2 * std::fabs(start - air));
    const double towards = sourceAt(start, tangent, light, air) / tangent;
    const double foreseen = towards + (start - towards) * std::exp((-tangent * duration) / absorberCapacity);
    const double slope = nodeArea * (a1 + a2 * (std::fabs(start - air) + std::fabs(foreseen - air)));
    const double end = sourceAt(start, slope, light, air) / slope;
    const double x = (slope * duration) / absorberCapacity;
    const double decay = std::exp(-x);
    absorber[node] = end + (start - end) * decay;
    lost += slope * (start - end) * (x > 1e-8 ? (1 - decay) / x : 1 - 0.5 * x);
  }
  collectorLossSum += (light * nodeArea * collectorNodes + lost) * duration;
  const int pipeNodes = (int)pipeT.size();
  for (int at = 0; at < pipeNodes; at++) {
    const double around = isIndoors(at, pipeNodes) ? room : air;
    pipeT[at] = around + (pipeT[at] - around) * pipeDecays[count][at];
  }
}

static void mixInversions(vector<double>& t) {
  const int nodes = (int)t.size();
  double below = t[0];
  for (int node = 1; node < nodes; node++) {
    const double here = t[node];
    if (here >= below) { below = here; continue; }
    int low = node - 1, high = node, size = 2;
    double sum = below + here;
    for (;;) {
      if (high + 1 < nodes && t[high + 1] * size < sum) { high++; sum += t[high]; }
      else if (low > 0 && t[low - 1] * size > sum) { low--; sum += t[low]; }
      else break;
      size++;
    }
    below = sum / size;
    for (int member = low; member <= high; member++) t[member] = below;
    node = high;
  }
}

static double cool(vector<double>& t, const Rest& rest) {
  double lost = 0;
  for (int pass = 0; pass < rest.passes; pass++) {
    const int top = (int)t.size() - 1;
    const double halfSquare = 0.5 * rest.ratio * rest.ratio;
    double fallen = 0, fromBelow = 0, here = t[0];
    double above = top > 0 ? t[1] : here, bend = above - here;
    for (int node = 0; node < top; node++) {
      const double next = node + 2 <= top ? t[node + 2] : above;
      const double slope = above - here, bendAbove = next - above - slope;
      const double fromAbove = rest.ratio * slope + halfSquare * (bendAbove - bend);
      const double fall = (here - room) * rest.lossShare[node];
      fallen += fall;
      t[node] = here - fall + (fromAbove - fromBelow);
      fromBelow = fromAbove;
      bend = bendAbove;
      here = above;
      above = next;
    }
    const double fall = (here - room) * rest.lossShare[top];
    t[top] = here - fall - fromBelow;
    lost += fallen + fall;
  }
  return lost * nodeCapacity;
}

static void restTank(int count, int steps) {
  const Rest& rest = rests[count];
  if (heated) {
    heated = false;
    middle = tank;
    mixInversions(middle);
    for (int node = 0; node < tankNodes; node++) {
      const double halfway = 0.5 * (tank[node] - coilRise[node] + middle[node]);
      middle[node] = halfway;
      drift[node] = halfway;
    }
    tankLossSum += cool(middle, rest);
    const double perSecond = steps / 3600.0;
    for (int node = 0; node < tankNodes; node++) {
      const double changed = middle[node] - drift[node];
      tank[node] += changed;
      drift[node] = changed * perSecond;
    }
  } else {
    tankLossSum += cool(tank, rest);
  }
  mixInversions(tank);
}

static double tableFlow(double power, double temperature) {
  const double y = std::min(std::max((temperature - flowLowest) * flowRowsPerKelvin, 0.0), (double)FLOW_ROWS);
  const int row = y < FLOW_ROWS ? (int)y : FLOW_ROWS - 1;
  const double fy = y - row;
  const double full = fullPower[row] + (fullPower[row + 1] - fullPower[row]) * fy;
  const double x = power < full ? FLOW_COLUMNS * std::sqrt(std::sqrt(power / full)) : FLOW_COLUMNS;
  const int column = x < FLOW_COLUMNS ? (int)x : FLOW_COLUMNS - 1;
  const double fx = x - column;
  const double* a = &flowTable[row * (FLOW_COLUMNS + 1) + column];
  const double* b = a + FLOW_COLUMNS + 1;
  const double below = a[0] + (a[1] - a[0]) * fx, above = b[0] + (b[1] - b[0]) * fx;
  return below + (above - below) * fy;
}

static void advance(int hour, int step, int steps, int at) {
  int count = 0;
  while ((int)stepCounts[count] != steps) count++;
  const double duration = 3600.0 / steps;
  if (step % 2 == 0) useWater(hour, steps);
  const double air = ambient[hour];
  const double supply = at < 0 ? 0 : pumpSupply[at];
  const double light = at >= 0 && irradiance[at] > 0 ? absorbed[at] : -skyLoss[hour];
  const double top = tank[tankNodes - 1];
  if (top >= limit) limited = true;
  else if (top <= release_) limited = false;
  running = supply > 0 && supply >= (running ? stopSupply : startSupply) && !limited;
  double flow = 0;
  if (running) {
    double inArray = 0, inPipes = 0;
    for (double t : absorber) inArray += t;
    for (double t : pipeT) inPipes += t;
    const double mean = 0.5 * (inArray / absorber.size()) + 0.5 * (inPipes / pipeT.size());
    flow = tableFlow(supply, mean);
    if (flow > 0) {
      const double rate = flow * fluid.evaluate(fluid.density, mean) * fluid.evaluate(fluid.heat, mean);
      const double ua = coilUA(flow, pipeT[(pipeT.size() >> 1) - 1], tank[coilBottom + (coilShare.size() >> 1)]);
      circulate(rate, ua, light, air, duration);
      pumpHours += 1.0 / steps;
    }
  }
  if (flow <= 0) standStill(count, steps, light, air);
  for (double t : absorber) {
    hottestAbsorber = std::max(hottestAbsorber, t);
    coldestAbsorber = std::min(coldestAbsorber, t);
  }
  restTank(count, steps);
  peak = std::max(peak, tank[tankNodes - 1]);
  if (step % 2 == 1) useWater(hour, steps);
}

static void year() {
  tank.assign(tankNodes, tankStart); coilRise.assign(tankNodes, 0); drift.assign(tankNodes, 0); middle.assign(tankNodes, 0);
  absorber.assign(collectorNodes, circuitStart);
  pipeT.clear();
  for (size_t at = 0; at < pipeCapacity.size(); at++)
    pipeT.push_back(isIndoors((int)at, (int)pipeCapacity.size()) ? room : circuitStart);
  heaterT = heaterStart;
  running = limited = heated = false;
  solarHeat = coilHeatSum = pumpHours = tapHeat = tankLossSum = collectorLossSum = 0;
  peak = hottestAbsorber = -1e9; coldestAbsorber = 1e9;
  for (int hour = 0; hour < 8760; hour++) {
    const bool day = lit[hour] == 1;
    const int steps = day ? stepsPerHour : tapVolume[hour] > 0 ? darkSteps : 1;
    for (int step = 0; step < steps; step++) {
      const int at = day ? hour * stepsPerHour + step : -1;
      const double top = tank[tankNodes - 1];
      const bool near = limited ? top < release_ + 1
                                : at >= 0 && top > std::min(limit, relief) - 1 - absorbed[at] * risePerLight;
      const int parts = day && near ? FINENESS : 1;
      for (int part = 0; part < parts; part++) advance(hour, step * parts + part, steps * parts, at);
    }
  }
}

int main(int count, char** names) {
  FILE* input = std::fopen(names[1], "rb");
  if (!input) return 1;
  std::fseek(input, 0, SEEK_END);
  file.resize(std::ftell(input) / sizeof(double));
  std::rewind(input);
  if (std::fread(file.data(), sizeof(double), file.size(), input) != file.size()) return 1;
  std::fclose(input);
  readAll();
  const int parts = collectorNodes + (int)pipeCapacity.size() + (int)coilShare.size();
  for (vector<double>* column : {&rx, &rshare, &rown, &rrest, &rstart, &rrise}) column->resize(parts);
  rinlet.resize(parts + 1); rmap.resize(8 * parts);
  source.resize(collectorNodes); perWeights.resize(coilShare.size()); drifts.resize(coilShare.size());
  const int runs = count > 2 ? std::atoi(names[2]) : 20;
  vector<double> times;
  for (int run = 0; run < runs; run++) {
    const auto start = std::chrono::steady_clock::now();
    year();
    times.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  std::sort(times.begin(), times.end());
  std::printf("{\"fastest\":%.6f,\"median\":%.6f,\"delivered\":%.9e,\"coilHeat\":%.9e,\"peak\":%.9f,\"hottest\":%.9f,\"coldest\":%.9f,\"pumpHours\":%.6f}\n",
              times[0], times[times.size() / 2], solarHeat, coilHeatSum, peak, hottestAbsorber, coldestAbsorber, pumpHours);
  return 0;
}
