// The syntax of switch configs: the one statement of it. Keywords stand here in full and in lower case; whatever reads
// a config expands abbreviations from this grammar first. Operands are optional where the no and default forms may leave
// them out. A keyword inside a rule whose name starts with "rare" belongs to few dialects: it never makes an abbreviation
// of another keyword ambiguous.
parser grammar SwitchConfigParser;

options { tokenVocab = SwitchConfigLexer; }

// ---------------------------------------------------------------------------------------------- entry rules, by context

topStatement          : form? topCommand EOF ;
portStatement         : form? portCommand EOF ;
vlanStatement         : form? vlanCommand EOF ;
vlanDatabaseStatement : form? vlanDatabaseCommand EOF ;
mstStatement          : form? mstCommand EOF ;

// A whole config: every line with a line break before it, children behind exactly one blank, no banner, blob or comment.
file
  : section* EOF
  ;

section
  : NEWLINE portHeader portChild*
  | NEWLINE vlanHeader vlanChild*
  | NEWLINE vlanDatabaseHeader vlanDatabaseChild*
  | NEWLINE mstHeader mstChild*
  | NEWLINE otherBlock otherChild*
  | NEWLINE topLine
  | otherChild
  ;

topLine           : form? topCommand | unknown ;
portChild         : CHILD ( form? portCommand | unknown ) ;
vlanChild         : CHILD ( form? vlanCommand | unknown ) ;
vlanDatabaseChild : CHILD ( form? vlanDatabaseCommand | unknown ) ;
mstChild          : CHILD ( form? mstCommand | unknown ) ;
otherChild        : CHILD unknown ;
unknown           : ~( NEWLINE | CHILD )+ ;

form
  : 'no'
  | 'default'
  ;

// ------------------------------------------------------------------------------------------------------------ top level

topCommand
  : sessionCommand
  | identity
  | vlanSpreading
  | switchTree
  | switchWide
  | vlanHeader
  | vlanLine
  | vlanDatabaseHeader
  | mstHeader
  | portHeader
  | otherBlock
  | topHarmless
  ;

sessionCommand
  : 'exit'                                                                                                  # exit
  | 'quit'                                                                                                  # exit
  | 'end'                                                                                                   # end
  | 'do' tail                                                                                               # sessionHarmless
  ;

identity
  : 'hostname' text?                                                                                        # hostname
  | rareSwitchname text?                                                                                    # hostname
  ;

rareSwitchname
  : 'switchname'
  ;

vlanSpreading
  : 'vtp' 'mode' vtpMode? vtpDatabase?                                                                      # spreadingMode
  | 'vtp' 'domain' text?                                                                                    # spreadingDomain
  | 'vtp' 'pruning'                                                                                         # spreadingPruning
  | 'vtp' vtpMode                                                                                           # spreadingModeShort
  | 'vtp' ( 'password' | 'version' | 'file' | 'interface' | 'primary' | 'v2-mode' ) tail                    # spreadingHarmless
  ;

vtpMode
  : 'server'
  | 'client'
  | 'transparent'
  | 'off'
  ;

vtpDatabase
  : 'vlan'
  | 'mst'
  | 'unknown'
  ;

// -------------------------------------------------------------------------------------- spanning tree of the whole switch

switchTree
  : 'spanning-tree'                                                                                         # treeEnable
  | 'spanning-tree' 'mode' treeMode?                                                                        # treeProtocol
  | 'spanning-tree' treeVlans vlans                                                                         # treeOfVlans
  | 'spanning-tree' treeScope 'priority' NUMBER?                                                            # treePriority
  | 'spanning-tree' 'priority' NUMBER?                                                                      # treePriority
  | 'spanning-tree' treeScope 'root' rootPlace? ( 'diameter' tail )?                                        # treeRoot
  | 'spanning-tree' 'root' rootPlace                                                                        # treeRoot
  | 'spanning-tree' 'pathcost' 'method' costMethod?                                                         # pathCost
  | 'spanning-tree' fastStartWord fastStartType? 'default'                                                  # fastStartOfAll
  | 'spanning-tree' ( fastStartWord 'edge'? )? guardWord 'default'                                          # bpduGuardDefault
  | 'spanning-tree' ( fastStartWord 'edge'? )? filterWord 'default'                                         # bpduFilterDefault
  | 'spanning-tree' fastStartWord 'edge'? guardWord                                                         # bpduGuardDefault
  | 'spanning-tree' fastStartWord 'edge'? filterWord                                                        # bpduFilterDefault
  | 'spanning-tree' 'loopguard' 'default'                                                                   # loopGuardDefault
  | 'spanning-tree' 'guard' 'loop' 'default'                                                                # loopGuardDefault
  | 'spanning-tree' rareRegionWord 'name' text?                                                             # regionName
  | 'spanning-tree' rareRegionWord 'revision' NUMBER?                                                       # regionRevision
  | 'spanning-tree' treeScope treeTimer tail                                                                # treeHarmless
  | 'spanning-tree' treeTimer tail                                                                          # treeHarmless
  | 'spanning-tree' treeDetail tail                                                                         # treeHarmless
  | 'spanning-tree' 'mst' treeMstDetail tail                                                                # treeHarmless
  ;

treeVlans
  : 'vlan'
  | rareVlanId
  ;

rareVlanId
  : 'vlan-id'
  ;

rareRegionWord
  : 'region'
  ;

treeMode
  : 'pvst'
  | 'rapid-pvst'
  | 'mst'
  | rareTreeMode
  | 'none'
  ;

rareTreeMode
  : 'rpvst'
  | 'mstp'
  | 'rstp'
  | 'stp'
  ;

treeScope
  : treeVlans vlans
  | 'mst' vlans
  ;

rootPlace
  : 'primary'
  | 'secondary'
  ;

costMethod
  : 'long'
  | 'short'
  ;

fastStartWord
  : 'portfast'
  | 'port' 'type'
  | rareEdgePort
  ;

rareEdgePort
  : 'edge-port'
  ;

fastStartType
  : 'edge'
  | 'network'
  | 'normal'
  ;

guardWord
  : 'bpduguard'
  | rareBpduGuard
  ;

rareBpduGuard
  : 'bpdu-guard'
  ;

filterWord
  : 'bpdufilter'
  | rareBpduFilter
  ;

rareBpduFilter
  : 'bpdu-filter'
  ;

treeTimer
  : 'hello-time'
  | 'forward-time'
  | 'max-age'
  ;

treeDetail
  : 'extend'
  | 'backbonefast'
  | 'uplinkfast'
  | 'etherchannel'
  | 'logging'
  | 'bridge'
  | 'transmit'
  | 'dispute'
  | 'domain'
  | 'loopback-guard'
  | 'pseudo-information'
  | 'bpdu'
  | 'tcn'
  | 'optimize'
  ;

treeMstDetail
  : 'hello-time'
  | 'forward-time'
  | 'max-age'
  | 'max-hops'
  | 'simulate'
  | 'pre-standard'
  ;

mstHeader
  : 'spanning-tree' 'mst' 'configuration'
  ;

// ------------------------------------------------------------------------------------------- other switch-wide settings

switchWide
  : 'vlan' 'dot1q' 'tag' 'native'                                                                           # nativeTaggingDefault
  | 'vlan' 'filter' word? ( 'vlan-list' ( vlans | 'all' ) )?                                                # vlanFilter
  | 'udld' ( 'enable' | 'aggressive' )                                                                      # udldDefault
  | 'feature' 'udld'                                                                                        # udldDefault
  | 'udld' ( 'message' | 'recovery' ) tail                                                                  # switchHarmless
  | 'mls' 'qos'                                                                                             # qosEnable
  | 'mls' 'qos' mlsDetail tail                                                                              # switchHarmless
  | 'qos'                                                                                                   # qosEnable
  | 'qos' qosDetail tail                                                                                    # switchHarmless
  | 'system' 'mtu' NUMBER?                                                                                  # systemMtu
  | 'system' 'mtu' 'jumbo' NUMBER?                                                                          # systemMtuJumbo
  | 'system' 'jumbomtu' NUMBER?                                                                             # systemMtuJumbo
  | 'system' 'mtu' 'routing' NUMBER?                                                                        # systemMtuRouting
  | 'ip' 'routing'                                                                                          # ipRouting
  | 'ip' 'routing' ( 'vrf' | 'ipv6' | 'protocol' ) tail                                                     # switchHarmless
  | 'system' 'default' 'switchport'                                                                         # switchedDefault
  | 'system' 'default' 'switchport' 'shutdown'                                                              # shutDefault
  | 'switchport' 'default' 'mode' 'routed'                                                                  # routedDefault
  | 'switchport' 'default' 'mode' 'access'                                                                  # switchedDefault
  ;

mlsDetail
  : 'map'
  | 'srr-queue'
  | 'queue-set'
  | 'rewrite'
  | 'aggregate-policer'
  | 'bridged'
  | 'marking'
  | 'min-burst'
  | 'police'
  | 'statistics-export'
  ;

qosDetail
  : 'map'
  | 'trust'
  | 'queue-softmax-multiplier'
  | 'wred'
  | 'schedule-profile'
  | 'queue-profile'
  | 'dscp-map'
  | 'cos-map'
  | 'rewrite'
  | 'random-detect'
  | 'profile'
  ;

// ----------------------------------------------------------------------------------------------------------------- VLANs

vlanHeader
  : 'vlan' vlans
  ;

vlanLine
  : 'vlan' vlans databaseDetail+
  ;

vlanDatabaseHeader
  : 'vlan' 'database'
  ;

vlanCommand
  : 'name' text?                                                                                            # vlanName
  | 'state' ( 'active' | 'suspend' )?                                                                       # vlanState
  | 'shutdown'                                                                                              # vlanShutdown
  | 'ip' 'access-group' tail                                                                                # vlanStanzaFilter
  | 'apply' 'access-list' tail                                                                              # vlanStanzaFilter
  | vlanDetail tail                                                                                         # vlanHarmless
  | vlanUnmodelled tail                                                                                     # vlanMembers
  | sessionCommand                                                                                          # vlanSession
  ;

vlanDetail
  : 'mtu'
  | 'media'
  | 'said'
  | 'are'
  | 'ste'
  | 'ring'
  | 'parent'
  | 'bridge'
  | 'backupcrf'
  | 'tb-vlan1'
  | 'tb-vlan2'
  | 'stp'
  | 'remote-span'
  | 'mode'
  | 'vn-segment'
  | 'ip'
  | 'ipv6'
  | 'description'
  | 'voice'
  | 'service-policy'
  | 'xconnect'
  | 'vsan'
  | 'fcoe'
  | 'arp'
  | 'mac'
  | 'client-vlan'
  | 'apply'
  | 'member'
  | 'device-tracking'
  ;

vlanUnmodelled
  : 'private-vlan'
  | 'trunk' 'group'
  | 'untagged'
  | 'tagged'
  ;

vlanDatabaseCommand
  : 'vlan' vlans databaseDetail*                                                                            # databaseVlans
  | vlanSpreading                                                                                           # databaseSpreading
  | sessionCommand                                                                                          # databaseSession
  | ( 'apply' | 'abort' | 'reset' | 'show' ) tail                                                           # databaseHarmless
  ;

// A name runs to the end of the line: what follows it there is cut off again by whoever reads it.
databaseDetail
  : 'name' text
  | 'state' ( 'active' | 'suspend' )
  | ( 'media' | 'said' | 'mtu' ) word
  ;

// ------------------------------------------------------------------------------------------ multiple-spanning-tree region

mstCommand
  : 'name' text?                                                                                            # mstName
  | 'revision' NUMBER?                                                                                      # mstRevision
  | 'instance' NUMBER ( 'vlan' vlans )?                                                                     # mstInstance
  | ( 'private-vlan' | 'show' | 'abort' ) tail                                                              # mstHarmless
  | sessionCommand                                                                                          # mstSession
  ;

// ----------------------------------------------------------------------------------------------------------------- ports

// Which ports the words name is no matter of grammar: the spellings are too many.
portHeader
  : 'interface' 'range'? word+
  ;

portCommand
  : sessionCommand
  | portBasics
  | portSwitching
  | portTree
  | portBundle
  | portQuality
  | portProtection
  | portAddress
  | portRedundancy
  | portInherit
  | portHarmless
  ;

portBasics
  : 'description' text?                                                                                     # description
  | 'name' text?                                                                                            # interfaceVlanName
  | 'shutdown' 'force'?                                                                                     # shutdown
  | 'mtu' NUMBER?                                                                                           # mtu
  | 'speed' speedValue?                                                                                     # speed
  | 'duplex' ( 'full' | 'half' | 'auto' )?                                                                  # duplex
  | rareFullDuplex                                                                                          # duplexWord
  | 'encapsulation' 'dot1q' 'vlan'? NUMBER? 'native'?                                                       # subinterfaceTag
  | 'encapsulation' 'dot1q' NUMBER? 'second-dot1q' tail                                                     # unmodelledTag
  | 'encapsulation' ( 'ppp' | 'hdlc' | 'frame-relay' | 'isl' | 'default' | 'untagged' | 'priority-tagged' ) tail  # basicHarmless
  ;

rareFullDuplex
  : 'full-duplex'
  | 'half-duplex'
  ;

speedValue
  : NUMBER
  | 'auto' NUMBER*
  | 'nonegotiate'
  | 'forced'? word
  ;

// --------------------------------------------------------------------------------------------------- switching of a port

portSwitching
  : 'switchport'                                                                                            # switched
  | rareRouting                                                                                             # routing
  | 'switchport' 'mode' switchMode?                                                                         # portMode
  | 'switchport' 'nonegotiate'                                                                              # nonegotiate
  | 'switchport' 'access' 'vlan' NUMBER?                                                                    # accessVlan
  | 'switchport' 'voice' 'vlan' voiceVlan?                                                                  # voice
  | 'switchport' 'trunk' 'native' 'vlan' NUMBER?                                                            # nativeVlan
  | 'switchport' 'trunk' 'native' 'vlan' 'tag'                                                              # nativeTagging
  | 'switchport' 'trunk' 'allowed' 'vlan' vlanChange?                                                       # allowed
  | 'switchport' 'trunk' 'pruning' 'vlan' vlanChange?                                                       # pruning
  | 'switchport' 'trunk' 'encapsulation' trunkProtocol?                                                     # trunkEncapsulation
  | rareVlan 'access' NUMBER?                                                                               # wordAccessVlan
  | rareVlan 'trunk' 'native' NUMBER? 'tag'?                                                                # wordNativeVlan
  | rareVlan 'trunk' 'allowed' ( 'all' | vlans )?                                                           # wordAllowed
  | switchUnmodelled tail                                                                                   # unmodelled
  | 'switchport' switchDetail tail                                                                          # switchingHarmless
  | 'switchport' rareSwitchDetail tail                                                                      # switchingHarmless
  ;

rareRouting
  : 'routing'
  ;

rareVlan
  : 'vlan'
  ;

switchMode
  : 'access'
  | 'trunk'
  | 'dynamic' ( 'auto' | 'desirable' )
  | otherMode tail
  | rareOtherMode tail
  ;

otherMode
  : 'private-vlan'
  | 'dot1q-tunnel'
  ;

rareOtherMode
  : 'general'
  | 'hybrid'
  | 'customer'
  | 'fabricpath'
  | 'fex-fabric'
  | 'monitor'
  | 'provider'
  | 'tap'
  | 'tool'
  ;

voiceVlan
  : NUMBER
  | 'dot1p'
  | 'untagged'
  | 'none'
  ;

vlanChange
  : vlans
  | 'add' vlans
  | 'remove' vlans
  | 'except' vlans
  | 'all'
  | 'none'
  ;

trunkProtocol
  : 'dot1q'
  | 'isl'
  | 'negotiate'
  ;

switchUnmodelled
  : 'switchport' 'private-vlan'
  | 'switchport' 'access' 'vlan' ( 'dynamic' | 'name' )
  | 'switchport' 'voice' 'vlan' 'name'
  | 'switchport' 'trunk' 'group'
  | 'switchport' 'vlan'
  | 'switchport' rareSwitchUnmodelled
  ;

rareSwitchUnmodelled
  : 'host'
  | 'general'
  | 'hybrid'
  | 'pvid'
  | 'customer'
  | 'forbidden'
  | 'acceptable-frame-type'
  | 'ingress-filtering'
  | 'dot1q'
  | 'tap'
  | 'tool'
  ;

switchDetail
  : 'block'
  | 'protected'
  | 'priority'
  | 'autostate'
  | 'backup'
  ;

rareSwitchDetail
  : 'monitor'
  | 'source-interface'
  | 'phone'
  | 'mac'
  | 'isolated'
  | 'default'
  ;

// ----------------------------------------------------------------------------------------------- spanning tree of a port

portTree
  : 'spanning-tree'                                                                                         # treeOnPort
  | 'spanning-tree' rareTreeDisable                                                                         # treeOffPort
  | 'spanning-tree' 'portfast' portfastKind?                                                                # fastStart
  | 'spanning-tree' 'port' 'type' portType?                                                                 # typedFastStart
  | 'spanning-tree' rareEdgePort                                                                            # edgePort
  | 'spanning-tree' rarePortType ( 'admin-edge' | 'admin-network' )?                                        # edgePort
  | 'spanning-tree' rareCommonConfig 'portfast' toggle?                                                     # commonFastStart
  | 'spanning-tree' rareCommonConfig? 'bpduguard' toggle?                                                   # bpduGuard
  | 'spanning-tree' rareCommonConfig? rareBpduGuard toggle?                                                 # bpduGuard
  | 'spanning-tree' rareCommonConfig? 'bpdufilter' toggle?                                                  # bpduFilter
  | 'spanning-tree' rareCommonConfig? rareBpduFilter toggle?                                                # bpduFilter
  | 'spanning-tree' rareCommonConfig? 'guard' ( 'root' | 'loop' | 'none' )?                                 # guard
  | 'spanning-tree' rareGuard                                                                               # guardShort
  | 'spanning-tree' rareCommonConfig? treeScope? 'cost' ( NUMBER | 'auto' )?                                # treeCost
  | 'spanning-tree' rareCommonConfig? treeScope? 'port-priority' NUMBER?                                    # treePortPriority
  | 'spanning-tree' rareCommonConfig? 'link-type' linkType?                                                 # treeLinkType
  | 'spanning-tree' portTreeDetail tail                                                                     # portTreeHarmless
  | 'spanning-tree' 'mst' ( 'simulate' | 'pre-standard' ) tail                                              # portTreeHarmless
  | 'udld' 'port'? udldMode?                                                                                # udld
  ;

rareTreeDisable
  : 'disable'
  ;

portfastKind
  : 'trunk'
  | 'edge' 'trunk'?
  | 'network'
  | 'normal'
  | 'disable'
  ;

portType
  : 'edge' 'trunk'?
  | 'network'
  | 'normal'
  ;

rarePortType
  : 'port-type'
  ;

rareCommonConfig
  : 'common-config'
  ;

rareGuard
  : 'root-guard'
  | 'loop-guard'
  | 'rootguard'
  | 'loopguard'
  ;

toggle
  : 'enable'
  | 'disable'
  ;

linkType
  : 'point-to-point'
  | 'shared'
  | 'auto'
  ;

udldMode
  : 'enable'
  | 'aggressive'
  | 'disable'
  ;

portTreeDetail
  : 'bpdu'
  | 'stack-port'
  | 'mcheck'
  | 'tcn-guard'
  | 'transmit'
  | 'restricted-tcn'
  ;

// --------------------------------------------------------------------------------------------------------------- bundles

portBundle
  : 'channel-group' NUMBER? 'force'? ( 'mode' bundleMode )? ( 'force' | 'non-silent' )?                     # channelGroup
  | rareLag NUMBER?                                                                                         # lag
  | 'lacp' 'mode' bundleMode?                                                                               # lacpMode
  | ( 'port-channel' | 'lacp' ) 'min-links' NUMBER?                                                         # minLinks
  | ( 'vpc' | rareMlag ) ( NUMBER | 'peer-link' )?                                                          # multiChassis
  | 'channel-protocol' tail                                                                                 # bundleHarmless
  | 'port-channel' portChannelDetail tail                                                                   # bundleHarmless
  | 'lacp' lacpDetail tail                                                                                  # bundleHarmless
  | 'vpc' ( 'orphan-port' | 'peer-keepalive' ) tail                                                         # bundleHarmless
  ;

rareLag
  : 'lag'
  ;

rareMlag
  : 'mlag'
  ;

bundleMode
  : 'active'
  | 'passive'
  | 'on'
  | 'desirable'
  | 'auto'
  ;

portChannelDetail
  : 'load-defer'
  | 'load-balance'
  | 'standalone-disable'
  | 'lacp'
  | 'port'
  ;

lacpDetail
  : 'rate'
  | 'timer'
  | 'timeout'
  | 'port-priority'
  | 'fast-switchover'
  | 'suspend-individual'
  | 'graceful-convergence'
  | 'max-bundle'
  | 'system-id'
  | 'system-priority'
  | 'fallback'
  | 'failover'
  | 'port-id'
  | 'individual'
  ;

// ------------------------------------------------------------------------------------------------------ quality of service

portQuality
  : ( 'mls' 'qos' | rareQos )? 'trust' marking?                                                             # qosTrust
  | 'service-policy' ( 'type' 'qos' )? ( 'input' | 'output' ) word?                                         # servicePolicy
  | 'service-policy' 'type' policyType tail                                                                 # qualityHarmless
  | 'mls' 'qos' portMlsDetail tail                                                                          # qualityHarmless
  | rareQos portQosDetail tail                                                                              # qualityHarmless
  | 'auto' 'qos' tail                                                                                       # qualityHarmless
  | ( 'srr-queue' | 'priority-queue' | 'queue-set' | 'wrr-queue' | 'rcv-queue' ) tail                       # qualityHarmless
  | ( 'tx-queue' | 'fair-queue' | 'random-detect' | 'rate-limit' | 'traffic-shape' | 'tx-ring-limit' ) tail  # qualityHarmless
  | rareShape tail                                                                                          # qualityHarmless
  ;

marking
  : 'cos'
  | 'dscp'
  | 'ip-precedence'
  | 'device' word
  | 'none'
  ;

policyType
  : 'queuing'
  | 'queueing'
  | 'network-qos'
  | 'control'
  | 'control-plane'
  | 'pbr'
  | 'traffic'
  | 'access-control'
  ;

portMlsDetail
  : 'cos'
  | 'dscp-mutation'
  | 'vlan-based'
  | 'ipe'
  | 'bridged'
  | 'monitor'
  ;

portQosDetail
  : 'cos'
  | 'dscp'
  | 'shape'
  | 'dscp-mutation'
  | 'port-group'
  | 'queue'
  | 'map'
  ;

rareQos
  : 'qos'
  ;

rareShape
  : 'shape'
  | 'priority-flow-control'
  | 'congestion-control'
  ;

// ------------------------------------------------------------------------------------------------------------ protection

portProtection
  : 'storm-control' traffic tail                                                                            # stormControl
  | 'storm-control' ( 'action' | 'trap' | 'type' | 'include' ) tail                                         # protectionHarmless
  | 'switchport' 'port-security'                                                                            # portSecurity
  | 'switchport' 'port-security' securityDetail tail                                                        # protectionHarmless
  | 'ip' 'dhcp' 'snooping' 'trust'                                                                          # snoopingTrust
  | rareSnooping 'trust'                                                                                    # snoopingTrust
  | 'ip' 'dhcp' 'snooping' ( 'limit' | 'vlan' | 'information' ) tail                                        # protectionHarmless
  | 'ip' 'arp' 'inspection' 'trust'                                                                         # inspectionTrust
  | 'arp' 'inspection' 'trust'                                                                              # inspectionTrust
  | 'ip' 'arp' 'inspection' 'limit' tail                                                                    # protectionHarmless
  | 'ip' 'access-group' ( word ( 'in' | 'out' )? )?                                                         # accessGroup
  | 'apply' 'access-list' 'ip' ( word ( 'in' | 'out' | 'routed-in' | 'routed-out' )? )?                     # accessGroup
  ;

rareSnooping
  : 'dhcp-snooping'
  | 'dhcpv4-snooping'
  ;

traffic
  : 'broadcast'
  | 'multicast'
  | 'unicast'
  | 'unknown-unicast'
  ;

securityDetail
  : 'maximum'
  | 'violation'
  | 'aging'
  | 'mac-address'
  | 'limit'
  ;

// --------------------------------------------------------------------------------------------- addresses, VLAN interfaces

portAddress
  : 'ip' 'address' ( address mask? gateway? 'secondary'? )?                                                 # ipAddress
  | 'ip' 'address' 'dhcp' tail                                                                              # ipAddressDhcp
  | 'ip' 'unnumbered' word*                                                                                 # ipUnnumbered
  | 'ip' 'address' 'virtual' address?                                                                       # anycastAddress
  | 'ip' 'virtual-router' 'address' address?                                                                # anycastAddress
  | 'ip' 'address' ( 'negotiated' | 'pool' ) tail                                                           # addressHarmless
  | 'ipv6' 'address' ( address6 ( 'link-local' | 'eui-64' | 'anycast' )? tag? )?                            # ipv6Address
  | 'ipv6' 'address' ( 'autoconfig' | 'dhcp' ) tail                                                         # ipv6AddressDhcp
  | 'ipv6' 'address' ( 'use-link-local-only' | 'virtual' ) tail                                             # addressHarmless
  | 'autostate'                                                                                             # autostate
  | 'fabric' 'forwarding' 'mode' 'anycast-gateway'                                                          # anycastMode
  | rareActiveGateway 'ip' address?                                                                         # anycastAddress
  | rareActiveGateway ( 'ip' | 'ipv6' ) 'mac' tail                                                          # addressHarmless
  | rareActiveGateway 'ipv6' address6                                                                       # addressHarmless
  ;

rareActiveGateway
  : 'active-gateway'
  ;

address
  : ADDRESS4
  ;

mask
  : ADDRESS4
  ;

gateway
  : ADDRESS4
  ;

address6
  : ADDRESS6
  ;

tag
  : 'tag' word
  | 'secondary'
  ;

// ----------------------------------------------------------------------------------------------- first-hop redundancy

portRedundancy
  : redundancyKind NUMBER? redundancyAttribute                                                              # redundancy
  | redundancyKind NUMBER ( 'address-family'? ( 'ipv4' | 'ipv6' ) )?                                           # redundancyHeader
  | ( 'vrrp' | 'vrrpv3' ) NUMBER 'address-family' 'ipv4' redundancyAttribute                                # redundancyInFamily
  | 'hsrp' NUMBER 'ipv4' hsrpAttribute                                                                      # redundancyInFamily
  ;

redundancyKind
  : 'standby'
  | 'vrrp'
  | 'vrrpv3'
  | 'glbp'
  | 'hsrp'
  ;

redundancyAttribute
  : ( 'ip' | 'ipv4' | 'address' ) ( ADDRESS4 ( 'secondary' | 'primary' )? )?                                    # virtualAddress
  | 'virtual-router' 'address' ADDRESS4?                                                                        # virtualAddress
  | hsrpAttribute                                                                                           # shortAttribute
  | ( 'ipv6' | 'virtual-ip' ) tail                                                                          # attributeHarmless
  ;

hsrpAttribute
  : ( 'priority' | rarePriorityLevel ) ( NUMBER tail )?                                                     # priority
  | 'preempt' tail                                                                                          # preempt
  | 'version' NUMBER?                                                                                       # version
  | 'track' tail                                                                                            # track
  | redundancyDetail tail                                                                                   # otherAttribute
  ;

rarePriorityLevel
  : 'priority-level'
  ;

redundancyDetail
  : 'timers'
  | 'name'
  | 'authentication'
  | 'description'
  | 'mac-address'
  | 'follow'
  | 'use-bia'
  | 'bfd'
  | 'delay'
  | 'redirect'
  | 'redirects'
  | 'advertise'
  | 'advertisement-interval'
  | 'session'
  | 'shutdown'
  | 'match-address'
  | 'vrrpv2'
  | 'weighting'
  | 'load-balancing'
  | 'forwarder'
  | 'client-cache'
  | 'arp'
  | 'mac'
  ;

// ----------------------------------------------------------------------------- lines that a port takes from elsewhere

portInherit
  : 'source' 'template' ( word tail )?                                                                      # inherit
  | rareInherit 'port-profile' word?                                                                        # inherit
  | rareProfile word*                                                                                       # inherit
  ;

rareInherit
  : 'inherit'
  ;

rareProfile
  : 'profile'
  ;

// ------------------------------------------------------------------ statements of a port that touch nothing of the above

portHarmless
  : ( 'authentication' | 'access-session' | 'dot1x' | 'mab' | 'epm' ) tail
  | ( 'cdp' | 'lldp' | 'nmsp' | 'network-policy' | 'location' ) tail
  | ( 'snmp' | 'snmp-server' | 'rmon' | 'logging' | 'load-interval' | 'sflow' | 'monitor' ) tail
  | ( 'power' | 'mdix' | 'media-type' | 'negotiation' | 'flowcontrol' | 'fec' | 'transceiver' | 'beacon' ) tail
  | ( 'carrier-delay' | 'dampening' | 'keepalive' | 'hold-queue' | 'delay' | 'bandwidth' | 'medium' | 'link' ) tail
  | ( 'macro' | 'device-tracking' | 'subscriber' | 'ethernet' | 'hardware' | 'errdisable' ) tail
  | ( 'crypto' ( 'map' | 'ipsec' ) | 'cts' | 'macsec' | 'mka' | 'ptp' | 'ntp' | 'bfd' | 'mpls' | 'tunnel' ) tail
  | ( 'mac' | 'mac-address' | 'l2protocol-tunnel' | 'l2protocol' | 'bridge-group' | 'loopback' ) tail
  | ( 'isis' | 'fabric' 'forwarding' ( 'dhcp' | 'anycast-gateway-mac' ) ) tail
  | 'vrf' ( 'forwarding' | 'member' | 'attach' | 'receive' | 'select' ) tail
  | 'vrf' word?
  | rareOverlay tail
  | ( 'arp' ( 'timeout' | 'access-list' | 'gratuitous' | 'aging' | 'monitor' | 'cache' ) | 'multicast' | 'igmp' | 'pim' ) tail
  | ( 'service' ( 'instance' | 'unsupported-transceiver' ) | 'xconnect' | 'ppp' | 'clock' | 'dialer' | 'backup' ) tail
  | ( rareSwitch 'virtual' | rarePortWord | 'port-name' | 'vtp' ) tail
  | ( 'port' ( 'license' | 'speed' | 'duplex' | 'monitor' | 'link-flap' ) | 'persistent-delay' | 'ipx' | 'zone-member' ) tail
  | 'ip' ipDetail tail
  | 'ip' 'dhcp' ( 'relay' | 'client' | 'smart-relay' | 'server' ) tail
  | 'ip' 'arp' ( 'timeout' | 'gratuitous' | 'synchronize' | 'filter' ) tail
  | 'ip' 'virtual-router' 'mac-address' tail
  | 'ipv6' ipv6Detail tail
  ;

rareSwitch
  : 'switch'
  ;

rareOverlay
  : 'vxlan'
  | 'member'
  | 'ingress-replication'
  | 'suppress-arp'
  | 'suppress-unknown-unicast'
  | 'host-reachability'
  | 'source-interface'
  | 'mcast-group'
  | 'global'
  | 'identifier'
  | 'route-target'
  | 'designated-forwarder'
  | 'advertise'
  | 'multisite'
  | 'evpn'
  ;

rarePortWord
  : 'stackwise-virtual'
  | 'dual-active'
  | 'nat'
  | 'platform'
  | 'hw-module'
  | 'management'
  | 'mop'
  | 'energywise'
  ;

ipDetail
  : 'helper-address'
  | 'ospf'
  | 'pim'
  | 'igmp'
  | 'router'
  | 'rip'
  | 'eigrp'
  | 'nat'
  | 'nbar'
  | 'nhrp'
  | 'flow'
  | 'redirects'
  | 'unreachables'
  | 'proxy-arp'
  | 'local-proxy-arp'
  | 'directed-broadcast'
  | 'route-cache'
  | 'mask-reply'
  | 'mtu'
  | 'mroute-cache'
  | 'tcp'
  | 'verify'
  | 'source'
  | 'device'
  | 'policy'
  | 'port'
  | 'vrf'
  | 'forward'
  | 'forwarding'
  | 'management-vlan'
  | 'multicast'
  | 'ospf3'
  | 'admission'
  | 'auth-proxy'
  | 'accounting'
  | 'bandwidth-percent'
  | 'broadcast-address'
  | 'cgmp'
  | 'delay'
  | 'hello-interval'
  | 'hold-time'
  | 'summary-address'
  | 'split-horizon'
  | 'authentication'
  | 'rsvp'
  | 'sticky-arp'
  | 'wccp'
  | 'ips'
  | 'inspect'
  | 'virtual-reassembly'
  | 'load-sharing'
  | 'rtp'
  | 'bfd'
  | 'attached-host'
  | 'icmp'
  | 'irdp'
  ;

ipv6Detail
  : 'enable'
  | 'nd'
  | 'ospf'
  | 'ospfv3'
  | 'eigrp'
  | 'rip'
  | 'router'
  | 'pim'
  | 'mld'
  | 'dhcp'
  | 'traffic-filter'
  | 'redirects'
  | 'unreachables'
  | 'mtu'
  | 'verify'
  | 'multicast'
  | 'snooping'
  | 'source-guard'
  | 'destination-guard'
  | 'neighbor'
  | 'link-local'
  | 'route-cache'
  | 'flow'
  | 'policy'
  | 'unnumbered'
  | 'virtual-router'
  | 'bfd'
  | 'icmp'
  ;

// ------------------------------------------------------------------------------------------- blocks that nobody here reads

otherBlock
  : ( 'line' | 'router' | 'vrf' | 'class-map' | 'policy-map' | 'control-plane' | 'redundancy' | 'route-map' ) tail
  | ( 'template' | 'archive' | 'track' | 'voice' | 'telephony-service' | 'ephone' | 'ephone-dn' | 'dial-peer' ) tail
  | ( 'object-group' | 'parameter-map' | 'service-template' | 'call-home' | 'management' | 'mlag' | 'daemon' ) tail
  | ( 'l2vpn' | 'bridge-domain' | 'evpn' | 'role' | 'sampler' | 'wlan' | 'zone' | 'zone-pair' | 'device-sensor' ) tail
  | ( 'performance' | 'pseudowire-class' | 'table-map' | 'port-profile' | 'peer' | 'mka' | 'queue-monitor' ) tail
  | ( 'event' | 'crypto' | 'key' | 'domain' | 'applet' | 'aaa-server' | 'policy' | 'process' | 'address-family' ) tail
  | ( 'flow' | 'cns' | 'gatekeeper' | 'sccp' | 'stcapp' | 'roles' | 'class' | 'tacacs' | 'radius' | 'ldap' ) tail
  | ( 'monitor' | 'time-range' | 'guestshell' | 'app-hosting' | 'virtual-service' | 'nve' | 'segment-routing' ) tail
  | ( 'qos-profile' | 'vdc' | rareBlock ) tail
  | 'aaa' 'group' tail
  | ( 'ip' | 'ipv6' | 'mac' | 'arp' ) 'access-list' tail
  | 'ip' ( 'vrf' | 'sla' | 'inspect' | 'nbar' ) tail
  | ( 'ip' | 'ipv6' ) 'dhcp' 'pool' tail
  | 'vlan' ( 'access-map' | 'configuration' ) tail
  | 'vpc' 'domain' tail
  | 'switch' 'virtual' tail
  | 'macro' 'name' tail
  ;

rareBlock
  : 'switch-profile'
  | 'stackwise-virtual'
  ;

// ---------------------------------------------------------------------------------- top-level statements without bearing

topHarmless
  : ( 'version' | 'boot' | 'boot-start-marker' | 'boot-end-marker' | 'service' | 'license' ) tail
  | ( 'username' | 'enable' | 'password' | 'login' | 'privilege' | 'security' | 'banner' | 'alias' | 'prompt' ) tail
  | 'aaa' aaaDetail tail
  | ( 'access-list' | 'prefix-list' | 'community-list' | 'dot1x' | 'authentication' | 'access-session' | 'mab' ) tail
  | ( 'epm' | 'cts' | 'eap' | 'identity' | 'device-tracking' | 'port-security' | 'errdisable' | 'storm-control' ) tail
  | ( 'snmp' | 'snmp-server' | 'logging' | 'ntp' | 'sntp' | 'clock' | 'rmon' | 'sflow' | 'netflow' | 'telemetry' ) tail
  | ( 'radius-server' | 'tacacs-server' | 'ldap-server' | 'cdp' | 'lldp' | 'lacp' | 'port-channel' | 'link' | 'ptp' ) tail
  | ( 'feature' topFeature | 'feature-set' | 'install' | 'cli' | 'nxapi' | 'xml' | 'logrotate' | 'scheduler' ) tail
  | ( 'hardware' | 'hw-module' | 'module' | 'slot' | 'platform' | 'power' | 'environment' | 'transceiver' | 'poe' ) tail
  | ( 'switch' ( NUMBER | 'stack-member' ) | 'stack' | 'stack-power' | 'stack-mac' | 'card' | 'upgrade' | 'diagnostic' ) tail
  | ( 'sdm' | 'memory' | 'memory-size' | 'buffers' | 'exception' | 'file' | 'scripting' | 'kron' | 'warm-reboot' ) tail
  | ( 'ethernet' | 'macro' ( 'global' | 'auto' | 'description' ) | 'auto' | 'vstack' ) tail
  | ( 'bfd' | 'mpls' | 'multilink' | 'isdn' | 'frame-relay' | 'ipx' | 'l2protocol-tunnel' | 'l2' | 'copp' ) tail
  | ( 'fabric' | 'vxlan' | 'overlay' | 'nv' | 'otv' | 'wireless' | 'ap' | 'capwap' | 'location' ) tail
  | ( 'ssh' | 'telnet' | 'tftp-server' | 'ftp-server' | 'ftp' | 'netconf' | 'netconf-yang' | 'restconf' | 'http' ) tail
  | ( 'https' | 'web-management' | 'transport' | 'tcp' | 'terminal' | 'gateway' | 'tunnel' ) tail
  | ( 'configure' | 'write' | 'copy' | 'reload' | 'subscriber' | 'nmsp' | 'fips' | 'csdb' ) tail
  | ( 'monitoring' | 'route' | 'arp' arpDetail | 'mac' macDetail | 'mac-address-table' | 'priority-queue' ) tail
  | ( 'rcv-queue' | 'congestion-drops' | 'mvr' | 'gvrp' | 'igmp' | 'wsma' | 'session' | 'session-limit' | 'dns' ) tail
  | ( 'name-server' | 'load-interval' | 'packet' | 'resource' | 'rep' | 'profile' | 'system' systemDetail ) tail
  | rareTopWord tail
  | 'mls' ( 'netflow' | 'cef' | 'acl' | 'flow' | 'rate-limit' | 'ip' | 'aging' | 'verify' ) tail
  | 'vlan' ( 'internal' | 'group' | 'accounting' | 'ifdescr' | 'dot1q' 'tag' 'pvid' ) tail
  | 'vpc' 'shutdown' tail
  | 'ip' topIpDetail tail
  | 'ip' 'dhcp' topDhcpDetail tail
  | 'ipv6' topIpv6Detail tail
  | 'ipv6' 'dhcp' topDhcpDetail tail
  ;

rareTopWord
  : 'config-register'
  | 'default-gateway'
  | 'define'
  | 'wrr-queue'
  | 'network-policy'
  | 'cfs'
  | 'spd'
  ;

aaaDetail
  : 'new-model'
  | 'authentication'
  | 'authorization'
  | 'accounting'
  | 'session-id'
  | 'common-criteria'
  | 'root'
  | 'server'
  | 'local'
  | 'user'
  | 'max-sessions'
  | 'nas'
  | 'attribute'
  | 'dnis'
  | 'cache'
  ;

// A feature line switches a part of the system on; the part's own lines say what it does.
topFeature
  : word
  ;

arpDetail
  : 'timeout'
  | 'inspection'
  | 'aging'
  | 'cache'
  | ADDRESS4
  | 'vlan'
  ;

macDetail
  : 'address-table'
  | 'aging-time'
  | 'access-group'
  | 'security'
  ;

systemDetail
  : 'vlan'
  | 'nve'
  | 'qos'
  | 'login'
  | 'cores'
  | 'fabric-mode'
  | 'memory-thresholds'
  | 'inter-vlan-routing'
  | 'l1'
  | 'admin-vdc'
  | 'interface'
  | 'ignore'
  | 'disruptive'
  | 'env'
  ;

topDhcpDetail
  : 'snooping'
  | 'excluded-address'
  | 'relay'
  | 'bootp'
  | 'binding'
  | 'database'
  | 'use'
  | 'ping'
  | 'conflict'
  | 'smart-relay'
  | 'server'
  | 'remember'
  | 'limited-broadcast-address'
  | 'class'
  | 'compatibility'
  | 'limit'
  | 'update'
  ;

topIpDetail
  : 'route'
  | 'address'
  | 'domain-name'
  | 'domain-lookup'
  | 'domain-list'
  | 'domain'
  | 'name-server'
  | 'default-gateway'
  | 'default-network'
  | 'ssh'
  | 'http'
  | 'https'
  | 'telnet'
  | 'forward-protocol'
  | 'cef'
  | 'arp'
  | 'igmp'
  | 'multicast-routing'
  | 'multicast'
  | 'pim'
  | 'msdp'
  | 'prefix-list'
  | 'community-list'
  | 'extcommunity-list'
  | 'as-path'
  | 'tftp'
  | 'ftp'
  | 'scp'
  | 'rcmd'
  | 'radius'
  | 'tacacs'
  | 'source-route'
  | 'source'
  | 'bootp'
  | 'finger'
  | 'classless'
  | 'subnet-zero'
  | 'nat'
  | 'device'
  | 'host'
  | 'flow'
  | 'flow-export'
  | 'flow-cache'
  | 'local'
  | 'tcp'
  | 'gratuitous-arps'
  | 'icmp'
  | 'options'
  | 'redirects'
  | 'verify'
  | 'virtual-router'
  | 'rsvp'
  | 'explicit-path'
  | 'access-log'
  | 'accounting-threshold'
  | 'admission'
  | 'auth-proxy'
  | 'bgp-community'
  | 'load-sharing'
  | 'hardware'
  | 'identd'
  | 'kerberos'
  | 'mroute'
  | 'port-map'
  | 'sap'
  | 'security'
  | 'spd'
  | 'traffic-export'
  | 'unnumbered'
  | 'urlfilter'
  | 'wccp'
  | 'ips'
  | 'management'
  | 'ospf'
  | 'adjacency'
  ;

topIpv6Detail
  : 'unicast-routing'
  | 'cef'
  | 'route'
  | 'nd'
  | 'mld'
  | 'multicast-routing'
  | 'prefix-list'
  | 'source-route'
  | 'snooping'
  | 'neighbor'
  | 'host'
  | 'hop-limit'
  | 'icmp'
  | 'local'
  | 'general-prefix'
  | 'router'
  | 'pim'
  | 'source-guard'
  | 'destination-guard'
  | 'address'
  | 'hardware'
  | 'virtual-router'
  | 'enable'
  | 'redirects'
  | 'traffic-filter'
  | 'inspect'
  ;

// --------------------------------------------------------------------------------------------------------------- operands

vlans
  : vlanRange ( COMMA vlanRange )*
  ;

vlanRange
  : NUMBER ( DASH NUMBER )?
  ;

text
  : TEXT
  ;

word
  : ~( NEWLINE | CHILD | HOLE )
  ;

tail
  : ~( NEWLINE | CHILD | HOLE )*
  ;
