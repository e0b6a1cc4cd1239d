// Written by tools/generate.ts from data/; do not edit.
export const ALLOCATIONS_CSV = `# Service bands of RR Article 5, kHz, as far as they matter on board. regions: ITU Regions of the row. shared: with or secondary to another service.
# fixed-mobile stands for fixed, mobile and land mobile in any mix; radiolocation bands are left out.
low_khz,high_khz,service,regions,shared,confidence,source,note
415,525,maritime,2,yes,memory,RR Art. 5,"also aeronautical radionavigation; holds 490, 500 and 518 kHz"
415,526.5,maritime,1 3,yes,memory,RR Art. 5,"also aeronautical radionavigation; holds 490, 500 and 518 kHz"
472,479,amateur,1 2 3,yes,memory,RR Art. 5,secondary
525,1605,broadcasting,2,no,memory,RR Art. 5,
526.5,1606.5,broadcasting,1 3,no,memory,RR Art. 5,
1605,1625,broadcasting,2,no,verified,47 CFR 2.106 (public copy of the table),
1606.5,1625,maritime,1,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),also fixed and land mobile
1606.5,1800,fixed-mobile,3,yes,memory,RR Art. 5,also radiolocation and radionavigation
1625,1705,broadcasting,2,yes,verified,47 CFR 2.106 (public copy of the table),also fixed and mobile
1625,1705,fixed-mobile,2,yes,verified,47 CFR 2.106 (public copy of the table),also broadcasting
1635,1800,maritime,1,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),also fixed and land mobile; 5.90
1705,1800,fixed-mobile,2,yes,verified,47 CFR 2.106 (public copy of the table),also radiolocation
1800,1850,amateur,2,no,verified,47 CFR 97.301,
1800,2000,amateur,3,yes,verified,47 CFR 97.301,"also fixed, mobile and radionavigation"
1800,2000,fixed-mobile,3,yes,memory,RR Art. 5,also amateur
1810,1850,amateur,1,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 97.301,
1850,2000,amateur,2,yes,verified,47 CFR 97.301,also fixed and mobile
1850,2000,fixed-mobile,1,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later),
1850,2000,fixed-mobile,2,yes,verified,47 CFR 2.106 (public copy of the table),also amateur
2000,2045,fixed-mobile,1,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later),
2000,2065,fixed-mobile,2,no,verified,47 CFR 2.106 (public copy of the table),
2000,2065,fixed-mobile,3,no,memory,RR Art. 5,
2045,2160,maritime,1,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),also fixed and land mobile
2065,2107,maritime,2,no,verified,47 CFR 2.106 (public copy of the table),"5.105, 5.106"
2065,2107,maritime,3,no,memory,RR Art. 5,5.106
2107,2170,fixed-mobile,2,no,verified,47 CFR 2.106 (public copy of the table),
2107,2170,fixed-mobile,3,no,memory,RR Art. 5,
2170,2173.5,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
2173.5,2190.5,distress-and-calling,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),"mobile, distress and calling, 5.108-5.111; guard band of 2182"
2190.5,2194,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
2194,2300,fixed-mobile,1,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later),
2194,2300,fixed-mobile,2,no,verified,47 CFR 2.106 (public copy of the table),
2194,2300,fixed-mobile,3,no,memory,RR Art. 5,
2300,2495,broadcasting,2,yes,verified,47 CFR 2.106 (public copy of the table),"only in the Tropical Zone, 5.113; also fixed and mobile"
2300,2495,broadcasting,3,yes,memory,RR Art. 5,"only in the Tropical Zone, 5.113; also fixed and mobile"
2300,2495,fixed-mobile,2,yes,verified,47 CFR 2.106 (public copy of the table),also broadcasting in the Tropical Zone
2300,2495,fixed-mobile,3,yes,memory,RR Art. 5,also broadcasting in the Tropical Zone
2300,2498,broadcasting,1,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),"only in the Tropical Zone, 5.113; also fixed and mobile"
2300,2498,fixed-mobile,1,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),also broadcasting in the Tropical Zone
2495,2501,time-signal,2,no,verified,47 CFR 2.106 (public copy of the table),2500 kHz
2495,2501,time-signal,3,no,memory,RR Art. 5,2500 kHz
2498,2501,time-signal,1,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later),2500 kHz
2501,2502,time-signal,1 2,no,verified,47 CFR 2.106 (public copy of the table),
2501,2502,time-signal,3,no,memory,RR Art. 5,
2502,2505,time-signal,2 3,no,memory,RR Art. 5,
2502,2625,fixed-mobile,1,no,verified,47 CFR 2.106 (public copy of the table),
2505,2850,fixed-mobile,2,no,verified,47 CFR 2.106 (public copy of the table); lower edge as in 47 CFR 80.373(d)(1),
2505,2850,fixed-mobile,3,no,memory,RR Art. 5,
2625,2650,maritime,1,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),also maritime radionavigation
2650,2850,fixed-mobile,1,no,verified,47 CFR 2.106 (public copy of the table),
2850,3025,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route; 3023 kHz is for search and rescue
3025,3155,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route
3155,3200,fixed-mobile,1 2,no,verified,47 CFR 2.106 (public copy of the table),
3155,3200,fixed-mobile,3,no,memory,RR Art. 5,
3200,3400,broadcasting,1 2 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),"only in the Tropical Zone, 5.113; also fixed and mobile"
3200,3400,fixed-mobile,1 2,yes,verified,47 CFR 2.106 (public copy of the table),also broadcasting in the Tropical Zone
3200,3400,fixed-mobile,3,yes,memory,RR Art. 5,also broadcasting in the Tropical Zone
3400,3500,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
3500,3750,amateur,2,no,verified,47 CFR 97.301,
3500,3800,amateur,1,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 97.301,also fixed and mobile
3500,3800,fixed-mobile,1,yes,verified,47 CFR 2.106 (public copy of the table),also amateur
3500,3900,amateur,3,yes,verified,47 CFR 97.301,also fixed and mobile
3500,3900,fixed-mobile,3,yes,memory,RR Art. 5,also amateur
3750,4000,amateur,2,yes,verified,47 CFR 97.301,also fixed and mobile
3750,4000,fixed-mobile,2,yes,verified,47 CFR 2.106 (public copy of the table),also amateur
3800,3900,aeronautical,1,yes,verified,47 CFR 2.106 (public copy of the table),off-route; also fixed and land mobile
3900,3950,aeronautical,1,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later),off-route
3900,3950,aeronautical,3,yes,memory,RR Art. 5,also broadcasting
3900,3950,broadcasting,3,yes,memory,RR Art. 5,also aeronautical
3950,4000,broadcasting,1 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),also fixed
4000,4063,maritime,1 2 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),"also fixed; ship radiotelephony only, 5.127; ships keep off 4000-4005 kHz in Region 3, 5.126"
4063,4438,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
4438,4650,fixed-mobile,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
4650,4700,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
4700,4750,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route
4750,4995,broadcasting,1 2 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),"only in the Tropical Zone, 5.113; also fixed and land mobile"
4995,5005,time-signal,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),5000 kHz
5005,5060,broadcasting,1 2 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),"only in the Tropical Zone, 5.113; also fixed"
5060,5250,fixed-mobile,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
5250,5450,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),holds the secondary amateur band 5351.5-5366.5
5351.5,5366.5,amateur,1 2 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),"secondary, 15 W e.i.r.p. in most countries, 5.133B; national rules differ widely"
5450,5480,aeronautical,1 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later),off-route; also fixed and land mobile
5450,5480,aeronautical,2,no,verified,47 CFR 2.106 (public copy of the table),route
5480,5680,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route; 5680 kHz is for search and rescue
5680,5730,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route
5730,5900,fixed-mobile,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
5900,5950,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),5.134; some fixed and mobile use remains
5950,6200,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
6200,6525,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
6525,6685,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
6685,6765,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route
6765,7000,fixed-mobile,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
7000,7200,amateur,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 97.301,
7200,7300,amateur,2,no,verified,47 CFR 97.301,
7200,7300,broadcasting,1 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later),
7300,7400,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
7400,7450,broadcasting,1 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later),
7400,7450,fixed-mobile,2,no,verified,47 CFR 2.106 (public copy of the table),
7450,8100,fixed-mobile,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
8100,8195,maritime,1 2 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),also fixed
8195,8815,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
8815,8965,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
8965,9040,aeronautical,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),off-route
9040,9400,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
9400,9900,broadcasting,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),5.134
9900,9995,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
9995,10005,time-signal,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),10000 kHz
10005,10100,aeronautical,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),route
10100,10150,amateur,1 2 3,yes,verified,47 CFR 2.106 (public copy of the table),secondary to fixed
10150,11175,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
11175,11275,aeronautical,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),off-route
11275,11400,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
11400,11600,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
11600,12100,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
12100,12230,fixed-mobile,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),fixed
12230,13200,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
13200,13260,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route
13260,13360,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
13360,13410,radio-astronomy,1 2 3,yes,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),also fixed
13410,13570,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
13570,13870,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
13870,14000,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
14000,14350,amateur,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
14350,14990,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
14990,15010,time-signal,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),15000 kHz
15010,15100,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route
15100,15800,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
15800,16360,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
16360,17410,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
17410,17480,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
17480,17900,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
17900,17970,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
17970,18030,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route
18030,18068,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
18068,18168,amateur,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
18168,18780,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
18780,18900,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
18900,19020,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
19020,19680,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
19680,19800,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
19800,19990,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
19990,20010,time-signal,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),20000 kHz
20010,21000,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
21000,21450,amateur,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
21450,21850,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
21850,21924,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),fixed
21924,22000,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),route
22000,22855,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
22855,23200,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
23200,23350,aeronautical,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),off-route; also fixed
23350,24890,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
24890,24990,amateur,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
24990,25010,time-signal,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),25000 kHz
25010,25070,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
25070,25210,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
25210,25550,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
25550,25670,radio-astronomy,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
25670,26100,broadcasting,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
26100,26175,maritime,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
26175,28000,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
28000,29700,amateur,1 2 3,no,verified,RR Art. 5 as in a Region 1 national table (2021 or later); 47 CFR 2.106 (public copy of the table),
29700,30000,fixed-mobile,1 2 3,no,verified,47 CFR 2.106 (public copy of the table),
`;
export const APPENDIX17_RANGES_CSV = `# Blocks of 3 kHz voice slots in RR Appendix 17, kHz. A slot begins at its carrier.
kind,band_mhz,low_khz,high_khz,confidence,source
ship,4,4065,4146,verified,RR Ap17 Part A (Rev.WRC-07)
ship,6,6200,6224,verified,RR Ap17 Part A (Rev.WRC-07)
ship,8,8195,8294,verified,RR Ap17 Part A (Rev.WRC-07)
ship,12,12230,12353,verified,RR Ap17 Part A (Rev.WRC-07)
ship,16,16360,16528,verified,RR Ap17 Part A (Rev.WRC-07)
ship,18,18780,18825,verified,RR Ap17 Part A (Rev.WRC-07)
ship,22,22000,22159,verified,RR Ap17 Part A (Rev.WRC-07)
ship,25,25070,25100,verified,RR Ap17 Part A (Rev.WRC-07)
simplex,4,4146,4152,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 2 slots of 3 kHz (the carriers of sub-section B)
simplex,6,6224,6233,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 3 slots of 3 kHz (the carriers of sub-section B)
simplex,8,8294,8300,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 2 slots of 3 kHz (the carriers of sub-section B)
simplex,12,12353,12368,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 5 slots of 3 kHz (the carriers of sub-section B)
simplex,16,16528,16549,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 7 slots of 3 kHz (the carriers of sub-section B)
simplex,18,18825,18846,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 7 slots of 3 kHz (the carriers of sub-section B)
simplex,22,22159,22180,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 7 slots of 3 kHz (the carriers of sub-section B)
simplex,25,25100,25121,verified,lower edge: RR Ap17 Part A (Rev.WRC-07); upper edge: 7 slots of 3 kHz (the carriers of sub-section B)
coast,4,4351,4438,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
coast,6,6501,6525,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
coast,8,8707,8815,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
coast,12,13077,13200,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
coast,16,17242,17410,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
coast,18,19755,19800,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
coast,22,22696,22855,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
coast,25,26145,26175,verified,"lower edge: 47 CFR 80.363(a)(2), upper edge of the coast wideband block; upper edge: band edge, RR Art. 5"
C-1,4,4000,4063,verified,RR Art. 5 band edges; 21 slots of 3 kHz
C-2,8,8101,8194,verified,"47 CFR 80.374(b)(2), first and last carrier; 31 slots of 3 kHz"
`;
export const APPENDIX17_VOICE_CSV = `# Voice channels of RR Appendix 17, Part B Section I. All figures are carriers in kHz, J3E upper sideband; assigned = carrier + 1.4.
section,band_mhz,channel,ship_khz,coast_khz,use,confidence,source,note
A,4,401,4065,4357,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,402,4068,4360,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,403,4071,4363,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,404,4074,4366,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,405,4077,4369,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,406,4080,4372,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,407,4083,4375,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,408,4086,4378,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,409,4089,4381,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,410,4092,4384,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,411,4095,4387,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,412,4098,4390,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,413,4101,4393,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,414,4104,4396,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,415,4107,4399,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,416,4110,4402,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,417,4113,4405,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,418,4116,4408,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,419,4119,4411,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,420,4122,4414,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,421,4125,4417,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),international calling pair; the ship carrier 4125 is also the 4 MHz distress and safety carrier (calling on it alone up to 1 kW PEP)
A,4,422,4128,4420,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,423,4131,4423,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,424,4134,4426,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,425,4137,4429,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,426,4140,4432,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,4,427,4143,4435,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,4,428,,4351,coast-only,verified,coast carrier and number: 47 CFR 80.371(b)(1); absence of a fixed ship carrier internationally: from memory of RR Ap17,the ship carrier is chosen nationally from sub-section B or C-1 (the USA: 4060)
A,4,429,,4354,coast-only,memory,coast carrier: block arithmetic; channel number and absence of a fixed ship carrier: from memory of RR Ap17,the ship carrier is chosen nationally from sub-section B or C-1
A,6,601,6200,6501,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,6,602,6203,6504,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,6,603,6206,6507,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,6,604,6209,6510,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,6,605,6212,6513,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,6,606,6215,6516,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),international calling pair; the ship carrier 6215 is also the 6 MHz distress and safety carrier (calling on it alone up to 1 kW PEP)
A,6,607,6218,6519,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,6,608,6221,6522,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,801,8195,8719,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,802,8198,8722,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,803,8201,8725,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,804,8204,8728,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,805,8207,8731,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,806,8210,8734,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,807,8213,8737,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,808,8216,8740,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,809,8219,8743,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,810,8222,8746,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,811,8225,8749,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,812,8228,8752,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,813,8231,8755,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,814,8234,8758,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,815,8237,8761,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,816,8240,8764,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,817,8243,8767,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,818,8246,8770,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,819,8249,8773,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,820,8252,8776,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,821,8255,8779,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),international calling pair; not the 8 MHz distress carrier (that is 8291)
A,8,822,8258,8782,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,823,8261,8785,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,824,8264,8788,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,825,8267,8791,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,826,8270,8794,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,827,8273,8797,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,828,8276,8800,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,829,8279,8803,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,830,8282,8806,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,831,8285,8809,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,8,832,8288,8812,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,8,833,8291,8291,simplex,verified,"carrier: RR Ap17 Part A (Rev.WRC-07), 33rd carrier; use: 47 CFR 80.369(b)","distress and safety carrier, the same both ways; never a working channel"
A,8,834,,8707,coast-only,memory,coast carrier: block arithmetic; channel number and absence of a fixed ship carrier: from memory of RR Ap17,the ship carrier is chosen nationally from sub-section B or C-2
A,8,835,,8710,coast-only,memory,coast carrier: block arithmetic; channel number and absence of a fixed ship carrier: from memory of RR Ap17,the ship carrier is chosen nationally from sub-section B or C-2
A,8,836,,8713,coast-only,verified,coast carrier and number: 47 CFR 80.371(b)(1); absence of a fixed ship carrier internationally: from memory of RR Ap17,the ship carrier is chosen nationally from sub-section B or C-2 (the USA: 8113)
A,8,837,,8716,coast-only,verified,coast carrier and number: 47 CFR 80.371(b)(1); absence of a fixed ship carrier internationally: from memory of RR Ap17,the ship carrier is chosen nationally from sub-section B or C-2 (the USA: 8128)
A,12,1201,12230,13077,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1202,12233,13080,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1203,12236,13083,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1204,12239,13086,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1205,12242,13089,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1206,12245,13092,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1207,12248,13095,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1208,12251,13098,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1209,12254,13101,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1210,12257,13104,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1211,12260,13107,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1212,12263,13110,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1213,12266,13113,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1214,12269,13116,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1215,12272,13119,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1216,12275,13122,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1217,12278,13125,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1218,12281,13128,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1219,12284,13131,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1220,12287,13134,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1221,12290,13137,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),calling pair; the ship carrier 12290 is the 12 MHz distress and safety carrier; routine calls belong on 12359
A,12,1222,12293,13140,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1223,12296,13143,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1224,12299,13146,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1225,12302,13149,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1226,12305,13152,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1227,12308,13155,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1228,12311,13158,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1229,12314,13161,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1230,12317,13164,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1231,12320,13167,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1232,12323,13170,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1233,12326,13173,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1234,12329,13176,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1235,12332,13179,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 47 CFR 80.371(b)(1),"47 CFR 80.371(b)(1) prints the ship carrier as 12232, a misprint: 12232 is off the 3 kHz raster and 12233 belongs to 1202"
A,12,1236,12335,13182,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1237,12338,13185,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,12,1238,12341,13188,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1239,12344,13191,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1240,12347,13194,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,12,1241,12350,13197,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1601,16360,17242,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1602,16363,17245,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1603,16366,17248,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1604,16369,17251,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1605,16372,17254,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1606,16375,17257,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1607,16378,17260,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1608,16381,17263,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1609,16384,17266,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1610,16387,17269,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1611,16390,17272,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1612,16393,17275,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1613,16396,17278,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1614,16399,17281,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1615,16402,17284,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1616,16405,17287,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1617,16408,17290,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1618,16411,17293,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1619,16414,17296,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1620,16417,17299,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1621,16420,17302,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),calling pair; the ship carrier 16420 is the 16 MHz distress and safety carrier; routine calls belong on 16537
A,16,1622,16423,17305,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1623,16426,17308,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1624,16429,17311,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1625,16432,17314,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1626,16435,17317,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1627,16438,17320,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1628,16441,17323,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1629,16444,17326,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1630,16447,17329,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1631,16450,17332,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1632,16453,17335,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1633,16456,17338,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1634,16459,17341,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1635,16462,17344,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1636,16465,17347,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1637,16468,17350,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1638,16471,17353,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1639,16474,17356,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1640,16477,17359,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1641,16480,17362,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1642,16483,17365,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1643,16486,17368,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1644,16489,17371,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1645,16492,17374,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1646,16495,17377,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1647,16498,17380,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1648,16501,17383,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,16,1649,16504,17386,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1650,16507,17389,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1651,16510,17392,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1652,16513,17395,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1653,16516,17398,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1654,16519,17401,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1655,16522,17404,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,16,1656,16525,17407,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,18,1801,18780,19755,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,18,1802,18783,19758,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,18,1803,18786,19761,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,18,1804,18789,19764,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,18,1805,18792,19767,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,18,1806,18795,19770,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),international calling pair
A,18,1807,18798,19773,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,18,1808,18801,19776,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,18,1809,18804,19779,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,18,1810,18807,19782,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,18,1811,18810,19785,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,18,1812,18813,19788,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,18,1813,18816,19791,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,18,1814,18819,19794,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,18,1815,18822,19797,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2201,22000,22696,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2202,22003,22699,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2203,22006,22702,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2204,22009,22705,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2205,22012,22708,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2206,22015,22711,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2207,22018,22714,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2208,22021,22717,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2209,22024,22720,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2210,22027,22723,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2211,22030,22726,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2212,22033,22729,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2213,22036,22732,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2214,22039,22735,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2215,22042,22738,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2216,22045,22741,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2217,22048,22744,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2218,22051,22747,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2219,22054,22750,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2220,22057,22753,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2221,22060,22756,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),international calling pair
A,22,2222,22063,22759,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2223,22066,22762,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2224,22069,22765,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2225,22072,22768,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2226,22075,22771,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2227,22078,22774,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2228,22081,22777,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2229,22084,22780,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2230,22087,22783,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2231,22090,22786,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2232,22093,22789,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2233,22096,22792,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2234,22099,22795,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2235,22102,22798,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2236,22105,22801,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2237,22108,22804,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2238,22111,22807,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2239,22114,22810,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2240,22117,22813,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2241,22120,22816,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2242,22123,22819,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2243,22126,22822,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2244,22129,22825,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2245,22132,22828,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2246,22135,22831,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2247,22138,22834,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,22,2248,22141,22837,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2249,22144,22840,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2250,22147,22843,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2251,22150,22846,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2252,22153,22849,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,22,2253,22156,22852,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,25,2501,25070,26145,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,25,2502,25073,26148,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,25,2503,25076,26151,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,25,2504,25079,26154,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.371(b)(1),
A,25,2505,25082,26157,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,25,2506,25085,26160,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,25,2507,25088,26163,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,25,2508,25091,26166,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,25,2509,25094,26169,duplex,verified,ship: RR Ap17 Part A (Rev.WRC-07); coast: 3 kHz raster by block arithmetic,
A,25,2510,25097,26172,duplex-calling,verified,ship: RR Ap17 Part A (Rev.WRC-07); pair: 47 CFR 80.369(d),international calling pair
B,4,,4146,4146,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,4,,4149,4149,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,6,,6224,6224,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,6,,6227,6227,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,6,,6230,6230,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,8,,8294,8294,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,8,,8297,8297,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,12,,12353,12353,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,12,,12356,12356,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,12,,12359,12359,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)",calling carrier in place of 12290 (up to 1 kW PEP); also working
B,12,,12362,12362,simplex,verified,RR Ap17 Part A (Rev.WRC-07),"between ships, or ship and coast, on one frequency"
B,12,,12365,12365,simplex,verified,RR Ap17 Part A (Rev.WRC-07),"between ships, or ship and coast, on one frequency"
B,16,,16528,16528,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,16,,16531,16531,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,16,,16534,16534,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,16,,16537,16537,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)",calling carrier in place of 16420 (up to 1 kW PEP); also working
B,16,,16540,16540,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,16,,16543,16543,simplex,verified,RR Ap17 Part A (Rev.WRC-07),"between ships, or ship and coast, on one frequency"
B,16,,16546,16546,simplex,verified,RR Ap17 Part A (Rev.WRC-07),"between ships, or ship and coast, on one frequency"
B,18,,18825,18825,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,18,,18828,18828,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,18,,18831,18831,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,18,,18834,18834,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,18,,18837,18837,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,18,,18840,18840,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,18,,18843,18843,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,22,,22159,22159,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,22,,22162,22162,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,22,,22165,22165,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,22,,22168,22168,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,22,,22171,22171,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,22,,22174,22174,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,22,,22177,22177,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,25,,25100,25100,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,25,,25103,25103,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,25,,25106,25106,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,25,,25109,25109,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,25,,25112,25112,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,25,,25115,25115,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
B,25,,25118,25118,simplex,verified,"RR Ap17 Part A (Rev.WRC-07); 47 CFR 80.371(b)(2), 80.373(c)","between ships, or ship and coast, on one frequency"
C-1,4,,4000,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair; ships keep off 4000-4005 kHz in Region 3 (RR 5.126)"
C-1,4,,4003,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair; ships keep off 4000-4005 kHz in Region 3 (RR 5.126)"
C-1,4,,4006,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4009,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4012,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4015,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4018,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4021,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4024,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4027,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4030,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4033,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4036,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4039,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4042,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4045,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4048,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4051,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4054,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4057,,ship-ship-cross-band,verified,47 CFR 80.374(a),"shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-1,4,,4060,,ship-ship-cross-band,verified,"47 CFR 80.371(b)(1), ship side of 428","shared with the fixed service; ships only (RR 5.127): between ships, or the ship side of a cross-band pair"
C-2,8,,8101,8101,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8104,8104,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8107,8107,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8110,8110,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8113,8113,ship-ship-cross-band,verified,"47 CFR 80.371(b)(1), ship side of 836 or 837","shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8116,8116,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8119,8119,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8122,8122,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8125,8125,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8128,8128,ship-ship-cross-band,verified,"47 CFR 80.371(b)(1), ship side of 836 or 837","shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8131,8131,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8134,8134,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8137,8137,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8140,8140,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8143,8143,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8146,8146,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8149,8149,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8152,8152,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8155,8155,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8158,8158,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8161,8161,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8164,8164,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8167,8167,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8170,8170,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8173,8173,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8176,8176,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8179,8179,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8182,8182,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8185,8185,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8188,8188,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
C-2,8,,8191,8191,ship-ship-cross-band,verified,47 CFR 80.374(b),"shared with the fixed service: between ships, ship and coast on one frequency, or cross-band"
`;
export const DSC_CALLING_CSV = `# Calls other than distress by digital selective calling. Centres (assigned frequencies) in kHz: what a ship sends on, what a coast station sends on.
series,ship_khz,coast_khz,confidence,source,note
international,458.5,455.5,verified,"47 CFR 80.359(a), worldwide series",
international,2189.5,2177,verified,"47 CFR 80.359(a), worldwide series",coast stations answer and call on 2177
international,4208,4219.5,verified,"47 CFR 80.359(a), worldwide series",
international,6312.5,6331,verified,"47 CFR 80.359(a), worldwide series",
international,8415,8436.5,verified,"47 CFR 80.359(a), worldwide series",
international,12577.5,12657,verified,"47 CFR 80.359(a), worldwide series",
international,16805,16903,verified,"47 CFR 80.359(a), worldwide series",
international,18898.5,19703.5,verified,"47 CFR 80.359(a), worldwide series",
international,22374.5,22444,verified,"47 CFR 80.359(a), worldwide series",
international,25208.5,26121,verified,"47 CFR 80.359(a), worldwide series",
intership,2177,2177,verified,47 CFR 80.359(a) note 1,"ship calls ship, and acknowledges, on 2177"
national-a,4208.5,4220,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-a,6313,6331.5,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-a,8415.5,8437,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-a,12578,12657.5,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-a,16805.5,16903.5,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-a,18899,19704,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-a,22375,22444.5,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-a,25209,26121.5,verified,"47 CFR 80.359(a), series A","USA: Atlantic, Gulf of Mexico and Caribbean"
national-b,4209,4220.5,verified,"47 CFR 80.359(a), series B",USA: elsewhere
national-b,6313.5,6332,verified,"47 CFR 80.359(a), series B",USA: elsewhere
national-b,8416,8437.5,verified,"47 CFR 80.359(a), series B",USA: elsewhere
national-b,12578.5,12658,verified,"47 CFR 80.359(a), series B",USA: elsewhere
national-b,16806,16904,verified,"47 CFR 80.359(a), series B",USA: elsewhere
national-b,18899.5,19704.5,verified,"47 CFR 80.359(a), series B",USA: elsewhere
national-b,22375.5,22445,verified,"47 CFR 80.359(a), series B",USA: elsewhere
national-b,25209.5,26122,verified,"47 CFR 80.359(a), series B",USA: elsewhere
`;
export const EMISSIONS_CSV = `# Classes of emission that a marine MF/HF set meets, with usual full designators. right, poor: modes that receive them (our judgement; note tells the loss of each poor one).
# family: speech (one sideband beside the carrier), carrier (full carrier), morse, keyed (two tones), data, chart.
class,family,designators,meaning,right,poor,confidence,source,note
J3E,speech,2K80J3E 2K70J3E,"speech, single sideband, carrier suppressed",USB,,verified,"47 CFR 80.205, 80.207",
R3E,speech,2K80R3E,"speech, single sideband, carrier reduced",USB,,verified,"47 CFR 80.205, 80.207",
H3E,carrier,2K80H3E,"speech, single sideband, full carrier",USB AM,,verified,"47 CFR 80.205, 80.207","2182 only, being withdrawn; some time signals"
A3E,carrier,6K00A3E,"speech, double sideband",AM,USB LSB,verified,"47 CFR 80.205, 80.207",USB: a dial off by some hertz shifts every tone; LSB: a dial off by some hertz shifts every tone
A1A,morse,160HA1A,Morse by keying the carrier,CW,USB LSB,verified,"47 CFR 80.205, 80.207",USB: heard only with the dial off by the note wanted; LSB: heard only with the dial off by the note wanted
J2A,morse,160HJ2A,Morse by keying a tone in single sideband,CW,USB LSB,verified,"47 CFR 80.205, 80.207",USB: heard only with the dial off by the note wanted; LSB: heard only with the dial off by the note wanted
F1B,keyed,300HF1B 280HF1B,text or calls by frequency-shift keying,FSK USB,LSB,verified,"47 CFR 80.205, 80.207",LSB: the two tones change places
J2B,keyed,300HJ2B 280HJ2B 2K80J2B,text or calls by a shifted tone in single sideband,FSK USB,LSB,verified,"47 CFR 80.205, 80.207",LSB: the two tones change places
J2D,data,2K80J2D,data in single sideband,USB,,verified,"47 CFR 80.205, 80.207",
F1C,chart,2K80F1C,"pictures by frequency shift, two tones",USB,LSB FSK,verified,"47 CFR 80.205, 80.207, 80.363",LSB: black and white change places; FSK: the filter is often too narrow for the whole shift
F3C,chart,2K80F3C 1K98F3C,pictures by frequency shift,USB,LSB FSK,verified,"47 CFR 80.205, 80.207, 80.363; 1K98F3C computed as in ITU-R SM.1138 (from memory)",LSB: black and white change places; FSK: the filter is often too narrow for the whole shift
J3C,chart,2K80J3C,pictures by a shifted tone in single sideband,USB,LSB FSK,verified,"47 CFR 80.205, 80.207, 80.363",LSB: black and white change places; FSK: the filter is often too narrow for the whole shift
J2C,chart,2K80J2C,pictures by a keyed tone in single sideband,USB,LSB FSK,verified,"47 CFR 80.205, 80.207, 80.363",LSB: black and white change places; FSK: the filter is often too narrow for the whole shift
`;
export const GUARD_CSV = `# The one list of distress, safety and calling carriers and DSC watch frequencies. kHz: carrier for voice, centre (assigned) for dsc and nbdp.
# required: a set must hold one place for it (receive is enough).
khz,kind,emission,label,required,confidence,source,note
2182,voice,J3E,"distress, safety and calling, 2 MHz",yes,verified,"47 CFR 80.369(a), 80.1077; IMO A.806(19) Part C 1.1",H3E and A3E may still be met; few stations keep a voice watch
4125,voice,J3E,"distress and safety, 4 MHz",yes,verified,"47 CFR 80.369(b), 80.1077; IMO A.806(19) Part C 1.1",also ship and aircraft in search and rescue; ship side of calling channel 421
6215,voice,J3E,"distress and safety, 6 MHz",yes,verified,"47 CFR 80.369(b), 80.1077; IMO A.806(19) Part C 1.1",ship side of calling channel 606
8291,voice,J3E,"distress and safety, 8 MHz",yes,verified,"47 CFR 80.369(b), 80.1077; IMO A.806(19) Part C 1.1","channel 833, one frequency"
12290,voice,J3E,"distress and safety, 12 MHz",yes,verified,"47 CFR 80.369(b), 80.1077; IMO A.806(19) Part C 1.1",ship side of channel 1221; routine calls belong on 12359 (from memory: RR 52.221A)
16420,voice,J3E,"distress and safety, 16 MHz",yes,verified,"47 CFR 80.369(b), 80.1077; IMO A.806(19) Part C 1.1",ship side of channel 1621; routine calls belong on 16537 (from memory: RR 52.221A)
2187.5,dsc,F1B,"distress and safety by selective calling, 2 MHz",no,verified,"47 CFR 80.359(b), 80.1077; IMO A.806(19) Part C 1.1",watched without a break by every MF and MF/HF fit (47 CFR 80.1123)
4207.5,dsc,F1B,"distress and safety by selective calling, 4 MHz",no,verified,"47 CFR 80.359(b), 80.1077; IMO A.806(19) Part C 1.1","an MF/HF fit watches at least one of 4207.5, 6312, 12577 and 16804.5 besides 2187.5 and 8414.5 (47 CFR 80.1123)"
6312,dsc,F1B,"distress and safety by selective calling, 6 MHz",no,verified,"47 CFR 80.359(b), 80.1077; IMO A.806(19) Part C 1.1","an MF/HF fit watches at least one of 4207.5, 6312, 12577 and 16804.5 besides 2187.5 and 8414.5 (47 CFR 80.1123)"
8414.5,dsc,F1B,"distress and safety by selective calling, 8 MHz",no,verified,"47 CFR 80.359(b), 80.1077; IMO A.806(19) Part C 1.1",watched without a break by every MF/HF fit (47 CFR 80.1123)
12577,dsc,F1B,"distress and safety by selective calling, 12 MHz",no,verified,"47 CFR 80.359(b), 80.1077; IMO A.806(19) Part C 1.1","an MF/HF fit watches at least one of 4207.5, 6312, 12577 and 16804.5 besides 2187.5 and 8414.5 (47 CFR 80.1123)"
16804.5,dsc,F1B,"distress and safety by selective calling, 16 MHz",no,verified,"47 CFR 80.359(b), 80.1077; IMO A.806(19) Part C 1.1","an MF/HF fit watches at least one of 4207.5, 6312, 12577 and 16804.5 besides 2187.5 and 8414.5 (47 CFR 80.1123)"
2174.5,nbdp,F1B,"former distress traffic by direct printing, 2 MHz",no,verified,"47 CFR 80.361(c), 80.1077",from memory: the 2024 edition of the Radio Regulations (WRC-23) withdrew it from Appendix 15 and gives it to the automatic connection system; still kept clear here
4177.5,nbdp,F1B,"former distress traffic by direct printing, 4 MHz",no,verified,"47 CFR 80.361(c), 80.1077",from memory: the 2024 edition of the Radio Regulations (WRC-23) withdrew it from Appendix 15 and gives it to the automatic connection system; still kept clear here
6268,nbdp,F1B,"former distress traffic by direct printing, 6 MHz",no,verified,"47 CFR 80.361(c), 80.1077",from memory: the 2024 edition of the Radio Regulations (WRC-23) withdrew it from Appendix 15 and gives it to the automatic connection system; still kept clear here
8376.5,nbdp,F1B,"former distress traffic by direct printing, 8 MHz",no,verified,"47 CFR 80.361(c), 80.1077",from memory: the 2024 edition of the Radio Regulations (WRC-23) withdrew it from Appendix 15 and gives it to the automatic connection system; still kept clear here
12520,nbdp,F1B,"former distress traffic by direct printing, 12 MHz",no,verified,"47 CFR 80.361(c), 80.1077",from memory: the 2024 edition of the Radio Regulations (WRC-23) withdrew it from Appendix 15 and gives it to the automatic connection system; still kept clear here
16695,nbdp,F1B,"former distress traffic by direct printing, 16 MHz",no,verified,"47 CFR 80.361(c), 80.1077",from memory: the 2024 edition of the Radio Regulations (WRC-23) withdrew it from Appendix 15 and gives it to the automatic connection system; still kept clear here
3023,sar-voice,J3E,search and rescue with aircraft,no,verified,"47 CFR 80.1077, 80.379(b)(2)","scene of action only; aircraft are called on 4125 first, then 3023 (47 CFR 80.1077 note 6)"
5680,sar-voice,J3E,search and rescue with aircraft,no,verified,"47 CFR 80.1077, 80.379(b)(2)",scene of action only
`;
export const MID_CSV = `# Maritime identification digits. Names are shortened. Check against the ITU table before relying on a newly allocated one.
mid,administration,confidence,source
201,Albania,verified,one public listing of the ITU table and memory
202,Andorra,verified,one public listing of the ITU table and memory
203,Austria,verified,one public listing of the ITU table and memory
204,Portugal - Azores,verified,one public listing of the ITU table and memory
205,Belgium,verified,one public listing of the ITU table and memory
206,Belarus,verified,one public listing of the ITU table and memory
207,Bulgaria,verified,one public listing of the ITU table and memory
208,Vatican City State,verified,one public listing of the ITU table and memory
209,Cyprus,verified,one public listing of the ITU table and memory
210,Cyprus,verified,one public listing of the ITU table and memory
211,Germany,verified,one public listing of the ITU table and memory
212,Cyprus,verified,one public listing of the ITU table and memory
213,Georgia,verified,one public listing of the ITU table and memory
214,Moldova,verified,one public listing of the ITU table and memory
215,Malta,verified,one public listing of the ITU table and memory
216,Armenia,verified,one public listing of the ITU table and memory
218,Germany,verified,one public listing of the ITU table and memory
219,Denmark,verified,one public listing of the ITU table and memory
220,Denmark,verified,one public listing of the ITU table and memory
224,Spain,verified,one public listing of the ITU table and memory
225,Spain,verified,one public listing of the ITU table and memory
226,France,verified,one public listing of the ITU table and memory
227,France,verified,one public listing of the ITU table and memory
228,France,verified,one public listing of the ITU table and memory
229,Malta,memory,"ITU table, after 2010"
230,Finland,verified,one public listing of the ITU table and memory
231,Denmark - Faroe Islands,verified,one public listing of the ITU table and memory
232,United Kingdom,verified,one public listing of the ITU table and memory
233,United Kingdom,verified,one public listing of the ITU table and memory
234,United Kingdom,verified,one public listing of the ITU table and memory
235,United Kingdom,verified,one public listing of the ITU table and memory
236,United Kingdom - Gibraltar,verified,one public listing of the ITU table and memory
237,Greece,verified,one public listing of the ITU table and memory
238,Croatia,verified,one public listing of the ITU table and memory
239,Greece,verified,one public listing of the ITU table and memory
240,Greece,verified,one public listing of the ITU table and memory
241,Greece,verified,one public listing of the ITU table and memory
242,Morocco,verified,two independent public listings of the ITU table
243,Hungary,verified,two independent public listings of the ITU table
244,Netherlands,verified,two independent public listings of the ITU table
245,Netherlands,verified,two independent public listings of the ITU table
246,Netherlands,verified,two independent public listings of the ITU table
247,Italy,verified,two independent public listings of the ITU table
248,Malta,verified,two independent public listings of the ITU table
249,Malta,verified,two independent public listings of the ITU table
250,Ireland,verified,two independent public listings of the ITU table
251,Iceland,verified,two independent public listings of the ITU table
252,Liechtenstein,verified,two independent public listings of the ITU table
253,Luxembourg,verified,two independent public listings of the ITU table
254,Monaco,verified,two independent public listings of the ITU table
255,Portugal - Madeira,verified,two independent public listings of the ITU table
256,Malta,verified,two independent public listings of the ITU table
257,Norway,verified,two independent public listings of the ITU table
258,Norway,verified,two independent public listings of the ITU table
259,Norway,verified,two independent public listings of the ITU table
261,Poland,verified,two independent public listings of the ITU table
262,Montenegro,verified,two independent public listings of the ITU table
263,Portugal,verified,two independent public listings of the ITU table
264,Romania,verified,two independent public listings of the ITU table
265,Sweden,verified,two independent public listings of the ITU table
266,Sweden,verified,two independent public listings of the ITU table
267,Slovakia,verified,two independent public listings of the ITU table
268,San Marino,verified,two independent public listings of the ITU table
269,Switzerland,verified,two independent public listings of the ITU table
270,Czechia,verified,two independent public listings of the ITU table
271,Turkiye,verified,two independent public listings of the ITU table
272,Ukraine,verified,two independent public listings of the ITU table
273,Russian Federation,verified,two independent public listings of the ITU table
274,North Macedonia,verified,two independent public listings of the ITU table
275,Latvia,verified,two independent public listings of the ITU table
276,Estonia,verified,two independent public listings of the ITU table
277,Lithuania,verified,two independent public listings of the ITU table
278,Slovenia,verified,two independent public listings of the ITU table
279,Serbia,verified,two independent public listings of the ITU table
301,United Kingdom - Anguilla,verified,two independent public listings of the ITU table
303,United States - Alaska,verified,two independent public listings of the ITU table
304,Antigua and Barbuda,verified,two independent public listings of the ITU table
305,Antigua and Barbuda,verified,two independent public listings of the ITU table
306,"Netherlands - Curacao, Sint Maarten, Bonaire, Sint Eustatius and Saba",verified,two independent public listings of the ITU table
307,Netherlands - Aruba,verified,two independent public listings of the ITU table
308,Bahamas,verified,two independent public listings of the ITU table
309,Bahamas,verified,two independent public listings of the ITU table
310,United Kingdom - Bermuda,verified,two independent public listings of the ITU table
311,Bahamas,verified,two independent public listings of the ITU table
312,Belize,verified,two independent public listings of the ITU table
314,Barbados,verified,two independent public listings of the ITU table
316,Canada,verified,two independent public listings of the ITU table
319,United Kingdom - Cayman Islands,verified,two independent public listings of the ITU table
321,Costa Rica,verified,two independent public listings of the ITU table
323,Cuba,verified,two independent public listings of the ITU table
325,Dominica,verified,two independent public listings of the ITU table
327,Dominican Republic,verified,two independent public listings of the ITU table
329,France - Guadeloupe,verified,two independent public listings of the ITU table
330,Grenada,verified,two independent public listings of the ITU table
331,Denmark - Greenland,verified,two independent public listings of the ITU table
332,Guatemala,verified,two independent public listings of the ITU table
334,Honduras,verified,two independent public listings of the ITU table
336,Haiti,verified,two independent public listings of the ITU table
338,United States,verified,two independent public listings of the ITU table
339,Jamaica,verified,two independent public listings of the ITU table
341,Saint Kitts and Nevis,verified,two independent public listings of the ITU table
343,Saint Lucia,verified,two independent public listings of the ITU table
345,Mexico,verified,two independent public listings of the ITU table
347,France - Martinique,verified,two independent public listings of the ITU table
348,United Kingdom - Montserrat,verified,two independent public listings of the ITU table
350,Nicaragua,verified,two independent public listings of the ITU table
351,Panama,verified,two independent public listings of the ITU table
352,Panama,verified,two independent public listings of the ITU table
353,Panama,verified,two independent public listings of the ITU table
354,Panama,verified,two independent public listings of the ITU table
355,Panama,verified,newer public listing; blank in the older one
356,Panama,verified,newer public listing; blank in the older one
357,Panama,verified,newer public listing; blank in the older one
358,United States - Puerto Rico,verified,two independent public listings of the ITU table
359,El Salvador,verified,two independent public listings of the ITU table
361,France - Saint Pierre and Miquelon,verified,two independent public listings of the ITU table
362,Trinidad and Tobago,verified,two independent public listings of the ITU table
364,United Kingdom - Turks and Caicos Islands,verified,two independent public listings of the ITU table
366,United States,verified,two independent public listings of the ITU table
367,United States,verified,two independent public listings of the ITU table
368,United States,verified,two independent public listings of the ITU table
369,United States,verified,two independent public listings of the ITU table
370,Panama,verified,two independent public listings of the ITU table
371,Panama,verified,two independent public listings of the ITU table
372,Panama,verified,two independent public listings of the ITU table
373,Panama,verified,one public listing newer than 2010; absent from the older one
374,Panama,verified,one public listing newer than 2010; absent from the older one
375,Saint Vincent and the Grenadines,verified,two independent public listings of the ITU table
376,Saint Vincent and the Grenadines,verified,two independent public listings of the ITU table
377,Saint Vincent and the Grenadines,verified,two independent public listings of the ITU table
378,United Kingdom - British Virgin Islands,verified,two independent public listings of the ITU table
379,United States - Virgin Islands,verified,two independent public listings of the ITU table
401,Afghanistan,verified,two independent public listings of the ITU table
403,Saudi Arabia,verified,two independent public listings of the ITU table
405,Bangladesh,verified,two independent public listings of the ITU table
408,Bahrain,verified,two independent public listings of the ITU table
410,Bhutan,verified,one public listing of the ITU table
412,China,verified,two independent public listings of the ITU table
413,China,verified,two independent public listings of the ITU table
414,China,verified,one public listing newer than 2010; absent from the older one
416,China - Taiwan,verified,two independent public listings of the ITU table
417,Sri Lanka,verified,two independent public listings of the ITU table
419,India,verified,two independent public listings of the ITU table
422,Iran,verified,two independent public listings of the ITU table
423,Azerbaijan,verified,two independent public listings of the ITU table
425,Iraq,verified,older public listing and memory; the newer listing wrongly gives Israel
428,Israel,verified,two independent public listings of the ITU table
431,Japan,verified,two independent public listings of the ITU table
432,Japan,verified,two independent public listings of the ITU table
434,Turkmenistan,verified,two independent public listings of the ITU table
436,Kazakhstan,verified,two independent public listings of the ITU table
437,Uzbekistan,verified,two independent public listings of the ITU table
438,Jordan,verified,two independent public listings of the ITU table
440,Korea (Republic of),verified,two independent public listings of the ITU table
441,Korea (Republic of),verified,two independent public listings of the ITU table
443,State of Palestine,verified,two independent public listings of the ITU table
445,Korea (Democratic People's Republic of),verified,two independent public listings of the ITU table
447,Kuwait,verified,two independent public listings of the ITU table
450,Lebanon,verified,two independent public listings of the ITU table
451,Kyrgyzstan,verified,two independent public listings of the ITU table
453,China - Macao,verified,two independent public listings of the ITU table
455,Maldives,verified,two independent public listings of the ITU table
457,Mongolia,verified,two independent public listings of the ITU table
459,Nepal,verified,two independent public listings of the ITU table
461,Oman,verified,two independent public listings of the ITU table
463,Pakistan,verified,two independent public listings of the ITU table
466,Qatar,verified,two independent public listings of the ITU table
468,Syria,verified,two independent public listings of the ITU table
470,United Arab Emirates,verified,two independent public listings of the ITU table
471,United Arab Emirates,verified,one public listing newer than 2010; absent from the older one
472,Tajikistan,verified,one public listing newer than 2010; absent from the older one
473,Yemen,verified,two independent public listings of the ITU table
475,Yemen,verified,two independent public listings of the ITU table
477,China - Hong Kong,verified,two independent public listings of the ITU table
478,Bosnia and Herzegovina,verified,two independent public listings of the ITU table
501,France - Adelie Land,verified,two independent public listings of the ITU table
503,Australia,verified,two independent public listings of the ITU table
506,Myanmar,verified,two independent public listings of the ITU table
508,Brunei,verified,two independent public listings of the ITU table
510,Micronesia,verified,two independent public listings of the ITU table
511,Palau,verified,two independent public listings of the ITU table
512,New Zealand,verified,two independent public listings of the ITU table
514,Cambodia,verified,two independent public listings of the ITU table
515,Cambodia,verified,two independent public listings of the ITU table
516,Australia - Christmas Island,verified,two independent public listings of the ITU table
518,New Zealand - Cook Islands,verified,two independent public listings of the ITU table
520,Fiji,verified,two independent public listings of the ITU table
523,Australia - Cocos (Keeling) Islands,verified,two independent public listings of the ITU table
525,Indonesia,verified,two independent public listings of the ITU table
529,Kiribati,verified,two independent public listings of the ITU table
531,Lao People's Democratic Republic,verified,two independent public listings of the ITU table
533,Malaysia,verified,two independent public listings of the ITU table
536,United States - Northern Mariana Islands,verified,two independent public listings of the ITU table
538,Marshall Islands,verified,two independent public listings of the ITU table
540,France - New Caledonia,verified,two independent public listings of the ITU table
542,New Zealand - Niue,verified,two independent public listings of the ITU table
544,Nauru,verified,two independent public listings of the ITU table
546,France - French Polynesia,verified,two independent public listings of the ITU table
548,Philippines,verified,two independent public listings of the ITU table
550,Timor-Leste,verified,"one public listing of the ITU table, newer than 2010"
553,Papua New Guinea,verified,two independent public listings of the ITU table
555,United Kingdom - Pitcairn Island,verified,two independent public listings of the ITU table
557,Solomon Islands,verified,two independent public listings of the ITU table
559,United States - American Samoa,verified,two independent public listings of the ITU table
561,Samoa,verified,two independent public listings of the ITU table
563,Singapore,verified,two independent public listings of the ITU table
564,Singapore,verified,two independent public listings of the ITU table
565,Singapore,verified,two independent public listings of the ITU table
566,Singapore,verified,one public listing newer than 2010; absent from the older one
567,Thailand,verified,two independent public listings of the ITU table
570,Tonga,verified,two independent public listings of the ITU table
572,Tuvalu,verified,two independent public listings of the ITU table
574,Viet Nam,verified,two independent public listings of the ITU table
576,Vanuatu,verified,two independent public listings of the ITU table
577,Vanuatu,verified,one public listing newer than 2010; absent from the older one
578,France - Wallis and Futuna,verified,two independent public listings of the ITU table
601,South Africa,verified,one public listing of the ITU table and memory
603,Angola,verified,one public listing of the ITU table and memory
605,Algeria,verified,one public listing of the ITU table and memory
607,France - Saint Paul and Amsterdam Islands,verified,one public listing of the ITU table and memory
608,United Kingdom - Ascension Island,verified,one public listing of the ITU table and memory
609,Burundi,verified,one public listing of the ITU table and memory
610,Benin,verified,one public listing of the ITU table and memory
611,Botswana,verified,one public listing of the ITU table and memory
612,Central African Republic,verified,one public listing of the ITU table and memory
613,Cameroon,verified,one public listing of the ITU table and memory
615,Congo,verified,one public listing of the ITU table and memory
616,Comoros,verified,one public listing of the ITU table and memory
617,Cabo Verde,verified,one public listing of the ITU table and memory
618,France - Crozet Archipelago,verified,one public listing of the ITU table and memory
619,Cote d'Ivoire,verified,one public listing of the ITU table and memory
620,Comoros,memory,"ITU table, after 2010"
621,Djibouti,verified,one public listing of the ITU table and memory
622,Egypt,verified,one public listing of the ITU table and memory
624,Ethiopia,verified,one public listing of the ITU table and memory
625,Eritrea,verified,one public listing of the ITU table and memory
626,Gabon,verified,one public listing of the ITU table and memory
627,Ghana,verified,one public listing of the ITU table and memory
629,Gambia,verified,one public listing of the ITU table and memory
630,Guinea-Bissau,verified,one public listing of the ITU table and memory
631,Equatorial Guinea,verified,one public listing of the ITU table and memory
632,Guinea,verified,one public listing of the ITU table and memory
633,Burkina Faso,verified,one public listing of the ITU table and memory
634,Kenya,verified,one public listing of the ITU table and memory
635,France - Kerguelen Islands,verified,one public listing of the ITU table and memory
636,Liberia,verified,one public listing of the ITU table and memory
637,Liberia,verified,one public listing of the ITU table and memory
638,South Sudan,memory,"ITU table, after 2010"
642,Libya,verified,one public listing of the ITU table and memory
644,Lesotho,verified,one public listing of the ITU table and memory
645,Mauritius,verified,one public listing of the ITU table and memory
647,Madagascar,verified,one public listing of the ITU table and memory
649,Mali,verified,one public listing of the ITU table and memory
650,Mozambique,verified,one public listing of the ITU table and memory
654,Mauritania,verified,one public listing of the ITU table and memory
655,Malawi,verified,one public listing of the ITU table and memory
656,Niger,verified,one public listing of the ITU table and memory
657,Nigeria,verified,one public listing of the ITU table and memory
659,Namibia,verified,one public listing of the ITU table and memory
660,France - Reunion,verified,one public listing of the ITU table and memory
661,Rwanda,verified,one public listing of the ITU table and memory
662,Sudan,verified,one public listing of the ITU table and memory
663,Senegal,verified,one public listing of the ITU table and memory
664,Seychelles,verified,one public listing of the ITU table and memory
665,United Kingdom - Saint Helena,verified,one public listing of the ITU table and memory
666,Somalia,verified,one public listing of the ITU table and memory
667,Sierra Leone,verified,one public listing of the ITU table and memory
668,Sao Tome and Principe,verified,one public listing of the ITU table and memory
669,Eswatini,verified,one public listing of the ITU table and memory
670,Chad,verified,one public listing of the ITU table and memory
671,Togo,verified,one public listing of the ITU table and memory
672,Tunisia,verified,one public listing of the ITU table and memory
674,Tanzania,verified,one public listing of the ITU table and memory
675,Uganda,verified,one public listing of the ITU table and memory
676,Democratic Republic of the Congo,verified,one public listing of the ITU table and memory
677,Tanzania,verified,one public listing of the ITU table and memory
678,Zambia,verified,one public listing of the ITU table and memory
679,Zimbabwe,verified,one public listing of the ITU table and memory
701,Argentina,verified,one public listing of the ITU table and memory
710,Brazil,verified,one public listing of the ITU table and memory
720,Bolivia,verified,one public listing of the ITU table and memory
725,Chile,verified,one public listing of the ITU table and memory
730,Colombia,verified,one public listing of the ITU table and memory
735,Ecuador,verified,one public listing of the ITU table and memory
740,United Kingdom - Falkland Islands (Malvinas),verified,one public listing of the ITU table and memory
745,France - Guiana,verified,one public listing of the ITU table and memory
750,Guyana,verified,one public listing of the ITU table and memory
755,Paraguay,verified,one public listing of the ITU table and memory
760,Peru,verified,one public listing of the ITU table and memory
765,Suriname,verified,one public listing of the ITU table and memory
770,Uruguay,verified,one public listing of the ITU table and memory
775,Venezuela,verified,one public listing of the ITU table and memory
`;
export const MMSI_FORMS_CSV = `# Forms of a maritime identity. pattern: whole number; mid_at: digits before the MID, empty where the form has none. The first form that fits counts.
id,form,pattern,use,mid_at,confidence,source,note
all-coast,009990000,009990000,all coast stations,,memory,ITU-R M.585,
coast,00MIDXXXX,00[2-7]\\d{6},coast station,2,verified,"ITU-R M.585; RR Appendix 43 as adapted by the U.S. Coast Guard, 1995",00MID0000 calls every coast station of a country (from memory)
group,0MIDXXXXX,0[2-7]\\d{7},group of ships,1,verified,"ITU-R M.585; RR Appendix 43 as adapted by the U.S. Coast Guard, 1995",its MID does not limit the nationality of the ships in it
ship,MIDXXXXXX,[2-7]\\d{8},ship station,0,verified,ITU-R M.585-9 (05/2022),
sar-aircraft,111MIDXXX,111[2-7]\\d{5},search and rescue aircraft,3,memory,ITU-R M.585,"1XX fixed wing, 5XX helicopter, both optional"
handheld,8MIDXXXXX,8[2-7]\\d{7},handheld VHF with DSC and GNSS,1,memory,ITU-R M.585,
craft-of-ship,98MIDXXXX,98[2-7]\\d{6},craft of a parent ship,2,memory,ITU-R M.585,
aid-to-navigation,99MIDXXXX,99[2-7]\\d{6},aid to navigation (AIS),2,memory,ITU-R M.585,"1XXX real, 6XXX virtual, 8XXX mobile"
ais-sart,970YYXXXX,970\\d{6},search and rescue transmitter (AIS),,memory,ITU-R M.585,
man-overboard,972YYXXXX,972\\d{6},man overboard device,,memory,ITU-R M.585,
epirb-ais,974YYXXXX,974\\d{6},EPIRB with AIS,,memory,ITU-R M.585,
autonomous-device,979YYXXXX,979\\d{6},"autonomous maritime device, group B",,memory,ITU-R M.585-9,added in that edition
`;
export const MSI_CSV = `# Frequencies reserved for maritime safety information. Centres (assigned frequencies) in kHz, F1B.
khz,service,label,confidence,source,note
490,navtex,"NAVTEX, national",verified,47 CFR 80.1077; national-language use: from memory of the IMO NAVTEX Manual,
518,navtex,"NAVTEX, international",verified,47 CFR 80.1077,English
4209.5,navtex,"NAVTEX, HF",verified,47 CFR 80.1077,
4210,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,"a public training text prints 4120.0, a misprint: it lies outside the safety text frequencies"
6314,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,
8416.5,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,
12579,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,
16806.5,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,
19680.5,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,
22376,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,
26100.5,nbdp-msi,HF safety text by NBDP,verified,47 CFR 80.1077,
`;
