package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Meaning;
import plumbline.statement.SwitchCommand;

/** Plants secrets wherever statements of the trade hold them (common practice, no source). */
class StatementSecretsTest {
  private static final StatementParser PARSER = new StatementParser();
  private static final List<String> SECRETS =
      List.of("hunter2", "0822455D0A16", "$1$mERr$hx5rVt7rPNoS4wqbXKX7m0", "Tr0ub4dor&3");

  private static final List<String> STATEMENTS =
      List.of(
          "enable password %s",
          "enable secret 5 %s",
          "username admin password 7 %s",
          "username admin privilege 15 secret %s",
          "snmp-server community %s RO",
          "snmp-server host 192.0.2.1 version 2c %s",
          "snmp-server user u g v3 auth sha %s priv aes 128 %s",
          "tacacs-server key %s",
          "tacacs-server host 192.0.2.1 key %s",
          "radius-server host 192.0.2.1 key 7 %s",
          "ntp authentication-key 1 md5 %s",
          "key chain %s",
          "key-string %s",
          "password %s",
          "vtp password %s",
          "crypto isakmp key %s address 192.0.2.1",
          "ip ftp password %s",
          "wpa-psk ascii 0 %s",
          "ip ospf message-digest-key 1 md5 %s",
          "ip ospf authentication-key %s",
          "isis password %s",
          "standby 1 authentication %s",
          "standby 1 authentication md5 key-string %s",
          "standby authentication text %s",
          "vrrp 1 authentication text %s",
          "glbp 1 authentication %s",
          "hsrp 1 authentication text %s",
          "ppp chap password %s",
          "ppp pap sent-username u password %s",
          "description console password %s",
          "description key=%s",
          "name SECRET %s",
          "hostname password %s",
          "banner motd ^C password %s ^C",
          "vtp domain community %s",
          "dot1x credentials %s",
          "neighbor 192.0.2.1 password %s",
          "macro description password %s",
          "no enable secret %s",
          "alias exec x y %s",
          "authentication key %s",
          "cts manual sap pmk %s",
          "mka pre-shared-key %s",
          "switchport trunk allowed vlan %s",
          "frobnicate %s");

  @Test
  void no_secret_leaves_a_statement_in_any_context() {
    for (Context context : Context.values()) {
      for (String statement : STATEMENTS) {
        for (String secret : SECRETS) {
          String text = statement.replace("%s", secret);
          Meaning meaning = PARSER.read(context, text);
          assertThat(meaning + PARSER.print(meaning))
              .as("%s: %s", context, statement)
              .doesNotContain(secret);
        }
      }
    }
  }

  @Test
  void a_line_that_is_a_hash_shows_nothing_of_it() {
    for (Context context : Context.values()) {
      assertThat(PARSER.read(context, "$9$nhEmQVczB7dqsO$X.HsgL6x1il0RxkOSSvyQY").toString())
          .doesNotContain("nhEm");
    }
  }

  @Test
  void a_hostname_keeps_words_that_announce_a_secret_elsewhere() {
    StatementParser parser = new StatementParser();
    assertThat(parser.read(Context.TOP, "hostname COMMUNITY-SW1"))
        .isEqualTo(
            new Meaning(
                Form.SET,
                new SwitchCommand.Hostname(Optional.of("COMMUNITY-SW1")),
                "hostname COMMUNITY-SW1"));
    assertThat(parser.read(Context.TOP, "hostname $1$abcd$efghijklmnop").quote())
        .isEqualTo("hostname ***");
  }
}
