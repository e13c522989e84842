import { nameKey } from './name-key';

/** Passwords of twelve characters and more that stand in published lists of leaked ones, or are typed as easily; from memory. */
const common: ReadonlySet<string> = new Set(
  `passwordpassword password1234 password12345 password123456 password1234567 password12345678 passw0rdpassw0rd
  iloveyou1234 iloveyouforever iloveyousomuch iloveyoubaby welcome12345 welcome123456 letmein12345 letmeinletmein
  administrator administrator1 administrator123 administrador adminadminadmin admin1234567 admin12345678 adminpassword
  changemechangeme changeme1234 changemenow1 qwertyuiopasdf qwertyuiop123 qwertyuiop1234 qwerty123456 qwerty1234567
  qwertyqwerty qwerty12345678 1qaz2wsx3edc 1qaz2wsx3edc4rfv zaq12wsxcde3 1q2w3e4r5t6y 1q2w3e4r5t6y7u8i q1w2e3r4t5y6
  asdfghjkl123 asdfghjkl1234 zxcvbnm12345 abcd12345678 abc123456789 a1b2c3d4e5f6 aa1234567890 dragondragon
  monkeymonkey sunshine1234 princess1234 football1234 baseball1234 superman1234 trustno1trustno1 correcthorsebatterystaple
  michaeljordan manchesterunited liverpoolfc1 thisismypassword mypassword123 mypassword1234 secretpassword newpassword123
  temporarypassword defaultpassword supersecret1 opensesame123 summer202020 winter202020 letmein123456 starwars1234
  1234567890qwerty 123456qwerty 123456789abc 123456789qwerty 0987654321ab 147258369147 159753159753 112233445566`.split(
    /\s+/,
  ),
);

/** Rows of keys and orders that a finger runs along. */
const runs = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890',
  'qwertyuiop',
  'asdfghjkl',
  'zxcvbnm',
  'qwertzuiop',
  'yxcvbnm',
];

/** Words that say where one is: taken away before the rest is looked at. */
const placeWords = ['ebbline', 'password', 'passwort', 'admin', 'operator', 'engineer', 'viewer', 'coolant', 'cooling'];

/** What is left must still be long enough to be no guess, characters. */
const enough = 6;

/**
 * Whether a password is one that is guessed first. There are no rules on what it is made of (NIST SP 800-63B section 3.1.1.2;
 * ASVS 5.0 V6.2.4, V6.2.5, V6.2.11); length is asked for at the border.
 */
export function isCommonPassword(password: string, name: string): boolean {
  const plain = password.normalize('NFKC').toLowerCase();
  if (common.has(plain)) return true;
  const rest = [...placeWords, ...nameParts(name)].reduce((text, word) => text.replaceAll(word, ''), plain);
  const withoutRuns = withoutRunsOf(rest);
  return isRepeated(plain) || withoutRuns.length < enough;
}

const nameParts = (name: string): string[] =>
  nameKey(name)
    .split(/[\s._-]+/u)
    .filter((part) => part.length > 2);

/** One short piece again and again. */
const isRepeated = (text: string): boolean => /^(.{1,6}?)\1+.{0,2}$/su.test(text);

/** Cuts every run of four and more along a row, forwards and backwards, down to its first character; and characters that repeat. */
function withoutRunsOf(text: string): string {
  let left = '';
  let length = 1;
  for (let i = 0; i < text.length; i++) {
    const follows = i > 0 && isStep(text[i - 1] ?? '', text[i] ?? '');
    length = follows ? length + 1 : 1;
    if (length < 4) left += text[i] ?? '';
    if (length === 4) left = left.slice(0, -2);
  }
  return left;
}

const isStep = (a: string, b: string): boolean =>
  a === b || runs.some((row) => row.includes(a + b) || row.includes(b + a));
