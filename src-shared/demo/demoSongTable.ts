// Invented for Shortslide: tunes, titles and places of a village jam that does not exist. The
// changes are the trade's common turns (common practice, no published source).

/** A song to start from. */
export type DemoSong = {
  /** A bare file name, and the same in every version. */
  readonly id: string;
  /** What a player learns from it, in one line. */
  readonly teaches: string;
  /** The chart. */
  readonly text: string;
};

/** The demo songs, easiest first. */
export const demoSongTable: readonly DemoSong[] = [
  {
    id: "ostlebeck-landing",
    teaches: "Three chords, a bar or two each: where the next shape lies.",
    text: `Title: Ostlebeck Landing
Key: G  Time: 4/4  Tempo: 200

[A]
| G | % | C | G |
| G | % | D | % |
| G | % | C | G |
| D | % | G | % |

[B]
| C | % | G | % |
| C | % | D | % |
| G | % | C | G |
| D | % | G | % |
`,
  },
  {
    id: "quillow-weir-waltz",
    teaches: "Three beats in a bar, sevenths that lead on, and a minor fourth.",
    text: `Title: Quillow Weir Waltz
Key: C  Time: 3/4  Tempo: 108

[A]
| C | % | F | C |
| % | Am | D7 | G7 |
| C | C7 | F | C |
| % | G7 | C | % |

[B]
| F | % | C | % |
| F | % | D7 | G7 |
| C | C7 | F | Fm |
| C | G7 | C | % |
`,
  },
  {
    id: "skarrow-hill-dash",
    teaches: "Two chords in a bar at cut time: half a bar for the slide.",
    text: `Title: Skarrow Hill Dash
Key: D  Time: 2/2  Tempo: 96

[A]
|: D | D G | D | A |
| D | D G | D A | D :|

[B]
|: Bm | Bm A | G | A |
| Bm | G A | D A | D :|
`,
  },
  {
    id: "lanterns-at-grindlewick",
    teaches: "Repeats with first and second endings, in A with the capo at 2.",
    text: `Title: Lanterns at Grindlewick
Key: A  Time: 4/4  Tempo: 184  Capo: 2

[A]
|: A | % | D | A |
| F#m | D |[1 A | E :|[2 E | A |]

[B]
|: D | % | A | % |
| Bm7 | E7 |[1 A | A7 :|[2 A | % |]
`,
  },
  {
    id: "rain-on-hobbin-mere",
    teaches: "A minor key: minor shapes, and the B7 that leads home.",
    text: `Title: Rain on Hobbin Mere
Key: Em  Time: 4/4  Tempo: 160

[A]
| Em | % | D | Em |
| Em | % | C | B7 |
| Em | G | D | Em |
| C | B7 | Em | % |

[B]
| G | % | D | % |
| C | G | Am | B7 |
| Em | G | D | C |
| C B7 | % | Em | % |
`,
  },
  {
    id: "tarnhollow-turnaround",
    teaches: "Chords by degree: change the key and the chart still holds.",
    text: `Title: Tarnhollow Turnaround
Key: G  Time: 4/4  Tempo: 168

[A]
| 1 | 1-7 | 4 | % |
| 1 | 6m | 2-7 | 5-7 |
| 1 | 1-7 | 4 | #4dim7 |
| 1/5 6m | 2m7 5-7 | 1 4 | 1 5-7 |

[B]
| 3-7 | % | 6-7 | % |
| 2-7 | % | 5-7 | % |
| 1 | 1-7 | 4 | #4dim7 |
| 1/5 6m | 2m7 5-7 | 1 4 | 1 |
`,
  },
  {
    id: "merrowdene-mail",
    teaches: "A form: sections written once and played in order, in B flat.",
    text: `Title: Merrowdene Mail
Key: Bb  Time: 2/2  Tempo: 100
Form: Verse Chorus Verse Chorus Tag

[Verse]
| Bb | Bb7 | Eb | Bb |
| Gm | Eb F | Bb | % |

[Chorus]
| Eb | % | Bb | Gm |
| C7 | % | F | F7 |

[Tag]
| Bb | Eb F7 | Bb | % |
`,
  },
  {
    id: "the-thimble-cart",
    teaches: "Six-eight time: two beats in a bar, and changes on the second.",
    text: `Title: The Thimble Cart
Key: D  Time: 6/8  Tempo: 108

[A]
|: D | D G | D | Em A |
| D | D G | A G |1 A D :|2 A D |

[B]
|: G | D | G D | A |
| Bm | G D | G A |[1 D . . . . A :|[2 D |]
`,
  },
  {
    id: "three-geese-to-pellick",
    teaches: "Counted beats: changes that come a beat early, and a bar left empty.",
    text: `Title: Three Geese to Pellick
Key: G  Time: 4/4  Tempo: 190

[A]
|: G | . . . C | . . . . | G |
| Em | . . . A7 | . . . . | D7 :|

[B]
|: C | G . D . | G | N.C. |
| C | G . D . | G . C D | G :|
`,
  },
];
